### Vietnamese, in the words of the South, which most nail salons abroad speak. Every line is marked
### draft until somebody of the trade who grew up with the language has read it; then: checked.

## Frame
# draft
program-name = Steamside
# draft
skip = Tới phần việc
# draft
places = Các trang
# draft
language = Ngôn ngữ
# draft
place-now = BÂY GIỜ
# draft
place-ready = SẴN SÀNG
# draft
place-machine = MÁY HẤP
# draft
place-log = SỔ GHI
# draft
book-demo = BẢN MẪU: số liệu giả
# draft
book-practice = THỰC HÀNH
# draft
did = Đã ghi: { $what }
# draft
undo = Rút lại
# draft
undo-release = Rút lại: để riêng
# draft
foot-manual = Sách hướng dẫn của máy và quy định địa phương luôn đứng trước.
# draft
foot-person = Công cụ này giúp người đã học nghề quyết định. Đây không phải thiết bị y tế.
# draft
back = Trở lại
# draft
since = Từ
# draft
not-known = chưa biết
# draft
minutes = phút
# draft
seconds = giây
# draft
one-fewer = Bớt một: { $what }
# draft
one-more = Thêm một: { $what }

## Dates
# draft
date-day = { $weekday } { $day } { $month }
# draft
date-short = { $day } { $month }
# draft
weekday-1 = Thứ Hai
# draft
weekday-2 = Thứ Ba
# draft
weekday-3 = Thứ Tư
# draft
weekday-4 = Thứ Năm
# draft
weekday-5 = Thứ Sáu
# draft
weekday-6 = Thứ Bảy
# draft
weekday-7 = Chủ Nhật
# draft
month-1 = tháng 1
# draft
month-2 = tháng 2
# draft
month-3 = tháng 3
# draft
month-4 = tháng 4
# draft
month-5 = tháng 5
# draft
month-6 = tháng 6
# draft
month-7 = tháng 7
# draft
month-8 = tháng 8
# draft
month-9 = tháng 9
# draft
month-10 = tháng 10
# draft
month-11 = tháng 11
# draft
month-12 = tháng 12

## Names
# draft
machine-name = Máy { $machine }
# draft
run-name = Máy { $machine }, mẻ { $run }
# draft
run-unnamed = một mẻ
# draft
run-unclaimed = bản ghi chưa thuộc mẻ nào
# draft
chair-name = ghế { $chair }
# draft
pouch-count = { $count } túi

## Signs
# draft
sign-none = Chưa có chữ ký. Thêm chữ ký của bạn trước.
# draft
sign-gone = (đã xóa)
# draft
sign-label = Chữ ký của bạn: chữ cái đầu và một từ, như HL cá
# draft
sign-example = HL cá
# draft
sign-add = Thêm chữ ký này

## States
# draft
state-used = đã dùng
# draft
state-soaking = đang ngâm
# draft
state-washed = đã rửa
# draft
state-disinfected = đã khử trùng
# draft
state-bagged = đã vô túi
# draft
state-in-machine = trong máy
# draft
state-to-check = chờ kiểm
# draft
state-ready = sẵn sàng
# draft
state-use-now = dùng ngay
# draft
state-opened = đã mở
# draft
state-set-aside = để riêng
# draft
state-away = ở ngoài
# draft
state-retired = đã loại bỏ
# draft
state-missing = bị thiếu

## What a record proves
# draft
outcome-did = Hơi nước đã làm đủ việc
# draft
outcome-did-not = Hơi nước chưa làm đủ việc
# draft
outcome-cannot-tell = Không biết chắc
# draft
outcome-leak-pass = Thử xì hơi: trong mức cho phép
# draft
outcome-leak-fail = Thử xì hơi: quá mức cho phép
# draft
outcome-none = Chưa có số
# draft
contents-unwrapped = không túi, đồ đặc
# draft
contents-pouched = trong túi, đồ đặc
# draft
contents-hollow = có đồ rỗng bên trong
# draft
contents-unknown = không ai nói bên trong có gì
# draft
known-tapped = do người báo
# draft
known-scanned = quét hoặc gõ mã
# draft
known-measured = máy đo
# draft
known-read = đọc trên màn hình máy
# draft
known-by-clock = theo đồng hồ
# draft
known-worked-out = tính ra
# draft
known-setting = cài đặt
# draft
known-from-paper = chép từ giấy
# draft
basis-record = Máy đo: từ bản ghi của chính máy. Bộ xét { $judge }.
# draft
basis-reading = Đọc: có người đọc số trên màn hình máy. Bộ xét { $judge }.
# draft
verdict-not-carried = Nhưng các số này không đủ cho đồ bên trong.
# draft
drying-as-set = Sấy đủ như đã cài
# draft
drying-short = Sấy thiếu
# draft
drying-none = Không sấy
# draft
drying-cannot-tell = Không biết chắc
# draft
drying-only-looks = Bản ghi không thấy được túi khô hay ướt. Phải nhìn mới biết.

## Reasons of a verdict
# draft
reason-hold-met = Ở đúng nhiệt độ { $held }; cần { $needed }.
# draft
reason-hold-short = Ở đúng nhiệt độ chỉ { $held }; cần { $needed }.
# draft
reason-hold-border = Ở đúng nhiệt độ { $held }, quá sát { $needed } nên không chắc.
# draft
reason-dip = Nhiệt độ tụt dưới { $set }. Khoảng dài nhất không tụt là { $held }.
# draft
reason-over-band = Nóng quá mức: tới { $highest }, đã cài { $set }.
# draft
reason-air-left = Còn khí bên trong: hơi nước lệch { $deviation } so với áp suất.
# draft
reason-superheat = Hơi nước quá khô: lệch { $deviation } so với áp suất.
# draft
reason-gasket-leak = Buồng hấp bị xì. Coi lại ron cửa.
# draft
reason-leak-rate = Áp suất lên quá nhanh trong lần thử xì hơi.
# draft
reason-sensor-offset = Nhiệt độ và áp suất không khớp: đầu đo lệch khoảng { $deviation }.
# draft
reason-sensor-frozen = Một đầu đo đứng yên trong khi buồng thay đổi.
# draft
reason-sensor-derived = Một cột được tính từ cột kia. Nó không chứng minh thêm gì.
# draft
reason-no-pressure = Bản ghi không có áp suất dùng được.
# draft
reason-gauge-as-absolute = Áp suất tính từ khí trời, không phải từ số không. Đã đọc theo cách đó.
# draft
reason-set-unclear = Không rõ nhiệt độ nào đã được cài.
# draft
reason-unit-unclear = Không rõ đơn vị của một cột.
# draft
reason-gap-in-hold = Thiếu số đo trong lúc ở đúng nhiệt độ.
# draft
reason-truncated = Bản ghi dừng quá sớm.
# draft
reason-aborted = Bản ghi nói mẻ bị dừng hoặc bị lỗi.
# draft
reason-clock-jump = Đồng hồ của máy bị nhảy.
# draft
reason-rows-missing = Thiếu vài dòng trong bản ghi.
# draft
reason-rows-doubled = Vài dòng bị ghi hai lần. Đã bỏ ra.
# draft
reason-rows-swapped = Vài dòng nằm sai chỗ. Đã xếp lại.
# draft
reason-drying-short = Sấy thiếu: { $drying }.
# draft
reason-drying-none = Không có sấy.
# draft
reason-weak-heater = Lên nhiệt lâu. Bộ đun có thể yếu.
# draft
reason-clogged-filter = Khí vô chậm. Bộ lọc có thể bị nghẹt.
# draft
reason-load-not-covered = Các số này không đủ cho đồ bên trong.
# draft
reason-unreadable = Không đọc được tập tin này như một bản ghi.
# draft
place-time = { $from } tới { $to }
# draft
place-lines = dòng { $first } tới { $last }

## DO NOT USE
# draft
do-not-use = KHÔNG DÙNG
# draft
stop-numbers = Số của mẻ không đạt
# draft
stop-cannot-tell = Các số không cho biết chắc
# draft
stop-mark = Một dấu không đổi màu
# draft
stop-wet = Ướt
# draft
stop-torn = Rách
# draft
stop-dropped = Bị rớt
# draft
stop-interrupted = Mẻ bị ngắt giữa chừng
# draft
stop-release-undone = Đã rút lại việc cho dùng
# draft
stop-recall = Bị thu hồi
# draft
stop-judged-worse = Xét lại thì xấu hơn
# draft
stop-not-sure = Có người không chắc
# draft
stop-unknown = Mã này không có trong sổ.
# draft
stop-unknown-do = Đọc lại lần nữa. Nếu vẫn không có, đừng dùng túi này.
# draft
stop-opened = Đã mở rồi: { $at }. Một túi chỉ dùng một lần.
# draft
stop-too-late = Đã hết giờ. Tính như đồ đã dùng.
# draft
stop-bagged = Chưa vô máy.
# draft
stop-to-check = Chưa kiểm.
# draft
stop-apart = Đã tháo ra. Túi không bao giờ dùng lại.
# draft
stop-do-aside = Để vô khay KHÔNG DÙNG. Lấy túi khác.
# draft
stop-do-used = Bỏ bộ này vô thùng đồ dơ. Lấy túi khác.
# draft
stop-do-start = Để chung với túi chờ hấp. Lấy túi khác.
# draft
stop-do-check = Để lại với mẻ của nó. Lấy túi khác.
# draft
stop-another = Tôi có túi khác
# draft
stopped-1 = Để hết vô khay KHÔNG DÙNG.
# draft
stopped-2 = Mở ra, rửa lại, lau khô, túi mới, dấu mới.
# draft
stopped-3 = Hấp lại, ít túi hơn.
# draft
stopped-4 = Hai lần trong một tuần: cho thợ coi máy.
# draft
contradicted = Hai dòng ghi trái nhau; dòng an toàn hơn được tính.

## Cautions
# draft
caution-hot = NÓNG, coi chừng phỏng. Dùng kẹp hoặc bao tay chịu nhiệt. Để nguội. Không mở khi còn áp suất.
# draft
caution-sharp = Đầu nhọn. Mở khớp, quay mũi ra xa người.
# draft
caution-gloves = Bao tay dày và kính che mắt khi cầm đồ dơ và hóa chất mạnh.
# draft
caution-manual = Sách hướng dẫn của máy và quy định địa phương luôn đứng trước.

## Now
# draft
now-title = Bây giờ
# draft
now-quiet = Không có việc gì cần làm.
# draft
check-pouches = Kiểm { $count } túi
# draft
washed-waiting = { $count } bộ đã rửa, chờ vô túi
# draft
bagged-waiting = { $count } túi chờ máy
# draft
unclaimed-title = Bản ghi chưa thuộc mẻ nào
# draft
unclaimed-clock = Đồng hồ của máy: { $clock }
# draft
apart-title = { $count } túi phải tháo ra
# draft
apart-do = Mở ra, rửa lại, lau khô, túi mới, dấu mới, mẻ mới.
# draft
apart-open = Đã mở và bỏ vô thùng đồ dơ
# draft
apart-asks = Đã tháo ra: chạm chữ ký
# draft
go-check = KIỂM
# draft
go-pack = VÔ TÚI
# draft
go-start = CHẠY MỘT MẺ
# draft
go-run = Về mẻ này
# draft
go-claim = MẺ NÀO?
# draft
go-chair = MỞ Ở GHẾ

## Wash and pack
# draft
wash-title = Rửa và vô túi
# draft
bin-about = { $count ->
    [0] Thùng đồ dơ trống
   *[other] Thùng đồ dơ: khoảng { $count } bộ
}
# draft
wash-look = Đã rửa, khô, coi kỹ, tra dầu? Rỉ sét, lụt, lỏng khớp: bỏ ra.
# draft
wash-asks = Đã rửa, tay sạch: chạm chữ ký
# draft
kinds-none = Chưa đếm bộ nào
# draft
kinds-none-do = Khai một lần: có loại bộ nào và bao nhiêu.
# draft
pack-none = Không có bộ nào chờ vô túi
# draft
pack-none-do = Chạm chữ ký dưới phần đã rửa trước.
# draft
pack-kind = Vô túi { $kind }: { $count } bộ đã rửa
# draft
pack-cautions = Mở khớp. Không chạm nhau. Tối đa ba phần tư túi.
# draft
pack-how-many = Số túi
# draft
pack-into = Để vô
# draft
pack-pouched = mỗi bộ một túi
# draft
pack-open = để trần, có thẻ số, để dùng ngay
# draft
pack-hollow = có đồ rỗng bên trong (lỗ, ống)
# draft
pack-asks = Đã vô túi: chạm chữ ký

## Start
# draft
start-title = Chạy một mẻ
# draft
start-no-machine = Không có máy trống
# draft
start-no-pouch = Không có túi nào chờ máy
# draft
start-inside = { $count } túi vô máy
# draft
start-contents = Hơi nước phải thấm qua: { $contents }.
# draft
start-which = Những túi nào
# draft
start-over = Nhiều hơn số khay này đã được thử ({ $most }).
# draft
start-programme = Chu trình, theo tên trên máy
# draft
start-cautions = Không chồng lên nhau, không chạm thành máy, đã coi nước, đã đóng cửa.
# draft
start-asks = CHẠY: chạm chữ ký

## A run in its machine
# draft
strip-ends = Thường hết giờ khoảng { $at }
# draft
strip-time-up = Hết giờ: coi máy
# draft
strip-too-few = Ít mẻ quá, chưa biết khi nào hết giờ
# draft
strip-started = Bắt đầu { $at }.
# draft
strip-usual = Ở đây thường { $low } tới { $high } phút, theo { $runs } mẻ.
# draft
strip-by-clock = Theo đồng hồ: ở đây không thấy được bên trong máy.
# draft
unload-asks = Đã lấy ra, để lên giá: chạm chữ ký
# draft
unloaded-at = Đã lấy ra khỏi máy:

## Machine
# draft
machine-title = Máy hấp
# draft
machine-none = Chưa có máy
# draft
machine-out = Ngưng dùng
# draft
machine-out-do = Ngưng dùng máy này
# draft
machine-back-asks = Dùng lại máy: chạm chữ ký
# draft
machine-last = Những mẻ vừa rồi
# draft
machine-no-runs = Chưa có
# draft
machine-clock = Đồng hồ của máy: nhanh { $ahead } phút
# draft
machine-clock-ahead = Đồng hồ của máy nhanh mấy phút (dấu trừ: chậm)
# draft
machine-clock-asks = Đã so đồng hồ: chạm chữ ký
# draft
reads-title = Cách đọc bản ghi của máy: { $what }
# draft
reads-how = Điều bạn chọn ở đây được dùng trước tập tin. Chỉ chọn điều chính bạn đọc trên màn hình hoặc trong sách của máy.
# draft
reads-temperature = Nhiệt độ của máy tính bằng
# draft
reads-pressure = Áp suất của máy tính bằng
# draft
reads-reference = Khi cửa mở, áp suất của máy chỉ
# draft
reads-gauge = khoảng 0 (áp suất đồng hồ)
# draft
reads-absolute = áp suất khí trời: khoảng 100 kPa, 1 bar, 14.7 psi; ở vùng cao thì ít hơn (tuyệt đối)
# draft
reads-gauge-short = áp suất đồng hồ
# draft
reads-absolute-short = áp suất tuyệt đối
# draft
reads-dates = Ngày tháng của máy ghi trước là
# draft
reads-day-first = ngày trước
# draft
reads-month-first = tháng trước
# draft
reads-altitude = Tiệm cao hơn mặt biển bao nhiêu mét
# draft
reads-as-file = theo tập tin
# draft
reads-asks = Tôi biết điều này: chạm chữ ký
# draft
ask-title = Một câu hỏi
# draft
ask-units = Máy này ghi nhiệt độ và áp suất bằng đơn vị nào, và ghi ngày tháng thế nào?
# draft
ask-gauge = Tập tin nói áp suất tính từ số không, nhưng coi như tính từ khí trời: khi cửa mở, máy này chỉ bao nhiêu?
# draft
ask-set = Nhiệt độ nào đã được cài? Chỉ màn hình hoặc giấy in của máy cho biết; không có thì chạy lại.
# draft
ask-which = Máy nào ghi tập tin này?
# draft
ask-kept = Câu trả lời được giữ cho máy đó, và những bản ghi chưa rõ của máy được xét lại. Không chắc thì để yên: trong lúc đó không cho dùng gì hết.
# draft
drift-title = Thay đổi dần qua các mẻ
# draft
drift-line = { $figure }: { $change } từ khoảng { $since }.
# draft
drift-very-sure = Rất chắc.
# draft
drift-sure = Chắc.
# draft
drift-just-past = Vừa qua mức.
# draft
drift-part-heater = Có thể do bộ đốt nóng: đóng cặn, dây lỏng, điện trở yếu.
# draft
drift-part-seal = Có thể do ron cửa: dơ, rách, mòn.
# draft
drift-part-pump = Có thể do bơm hút chân không.
# draft
drift-part-filter = Có thể do lọc khí: nghẹt hoặc ướt.
# draft
drift-part-filter-fast = Có thể do lọc khí: mới thay, rách, hay quên gắn? Thiếu lọc thì khí không lọc đi vào.
# draft
drift-part-drain = Có thể do đường xả: lưới lọc, van xả, ống.
# draft
drift-part-unclear = Bộ phận nào thì các số này không cho biết.
# draft
drift-share = (Bộ phận này: { $share } phần 100. Theo kinh nghiệm, không có nguồn.)
# draft
drift-proven = Thấy ở mẻ này
# draft
drift-ask = Đây là điều đã thay đổi, chưa phải chỗ hư: hỏi thợ máy. Không bản ghi nào bị xét theo điều này. Tắt máy, để nguội, hết áp suất rồi mới đụng vào; sách của máy là trước hết.
# draft
drift-heat-up = Thời gian lên nhiệt
# draft
drift-air-in = Thời gian cho khí vào
# draft
drift-first-pulse = Thời gian hút lần đầu
# draft
drift-pulse-depth = Độ sâu chân không trước khi vào hơi
# draft
drift-dry-depth = Chân không lúc sấy
# draft
drift-leak = Xì lúc giữ chân không
# draft
drift-exhaust = Thời gian xả hơi
# draft
drift-total = Thời gian của mẻ ngoài các phần đã biết
# draft
drift-plateau-low = Thấp nhất lúc đủ nhiệt
# draft
drift-plateau-high = Cao nhất lúc đủ nhiệt
# draft
drift-plateau-length = Thời gian đủ nhiệt
# draft
drift-saturation = Lệch so với áp suất
# draft
take-title = Nhận bản ghi
# draft
take-file = Tập tin từ máy
# draft
take-do = Nhận

## A run
# draft
run-started = Bắt đầu
# draft
run-programme = chu trình { $programme }
# draft
run-undone = đã rút lại
# draft
run-released = đã cho dùng
# draft
run-inside = Bên trong có gì
# draft
trace-title = Đường ghi của mẻ
# draft
trace-temperature = nhiệt độ
# draft
trace-saturation = nhiệt độ theo áp suất
# draft
trace-pressure = áp suất
# draft
trace-band = nhiệt độ cài và mức cho phép, { $from } tới { $to } °C
# draft
figures-title = Các số, và từ đâu ra
# draft
figure = Số
# draft
value = Giá trị
# draft
where-from = Từ đâu ra
# draft
figure-set = Nhiệt độ cài
# draft
figure-held = Thời gian ở đúng nhiệt độ
# draft
figure-needed = Thời gian cần
# draft
figure-lowest = Thấp nhất trong lúc đó
# draft
figure-highest = Cao nhất trong lúc đó
# draft
figure-deviation = Lệch so với áp suất
# draft
figure-drying-time = Thời gian sấy
# draft
figure-drying = Sấy
# draft
figure-total = Độ dài bản ghi
# draft
figure-inside = Bên trong có gì
# draft
figure-proven = Chứng minh cho
# draft
figure-proven-none = không có gì
# draft
limits-title = Các mức đã dùng

## The three looks
# draft
looks-title = Coi kỹ { $count } túi
# draft
looks-again = Một túi không tốt. Coi lại hết các túi khác.
# draft
look-numbers = Số đạt chưa?
# draft
look-numbers-yes = Đạt
# draft
look-marks = MỌI dấu đã đổi màu?
# draft
look-marks-how = Từng túi, mặt trước và mặt sau. So với màu trên bao bì.
# draft
look-dry = TẤT CẢ khô và nguyên?
# draft
look-dry-how = Không giọt nước, không giấy ẩm, không rách, không rớt. Khô sau vẫn là ướt.
# draft
look-inner = Chỉ thị bên trong: đã tới điểm cuối?
# draft
look-inner-how = Loại 5 hoặc 6, để giữa mẻ. Không có bản ghi thì phải có nó.
# draft
inner-not = CHƯA, HOẶC KHÔNG CÓ
# draft
one-not = CÓ TÚI CHƯA ĐẠT
# draft
which-marks = Dấu nào không đổi màu?
# draft
which-dry = Túi nào, và bị gì?
# draft
marks-reach = Một dấu không đổi thì cả mẻ không dùng.
# draft
dry-reach = Rách hay rớt: túi đó. Một túi ướt: túi đó, và coi lại hết. Hai túi ướt: cả mẻ.
# draft
one-not-asks = Tôi đã thấy: chạm chữ ký
# draft
looks-asks = Tôi đã coi từng túi. TẤT CẢ TỐT, CHO DÙNG: chạm chữ ký
# draft
no-release-did-not = Không cho dùng: số không đạt
# draft
no-release-cannot-tell = Chưa cho dùng: các số không cho biết chắc
# draft
no-release-not-carried = Không cho dùng: các số này không đủ cho đồ bên trong
# draft
no-release-do = Để riêng. Mở ra, rửa lại, lau khô, túi mới, dấu mới, mẻ mới.
# draft
no-release-cannot-tell-do = Nhận bản ghi, hoặc đọc ba số trên màn hình máy. Nếu không được: hấp lại.
# draft
not-sure = Không chắc?
# draft
set-aside-run = ĐỂ RIÊNG CẢ MẺ
# draft
numbers-title = Số lấy từ đâu?
# draft
numbers-file = Từ tập tin
# draft
numbers-read = Từ màn hình hoặc giấy in của máy
# draft
numbers-read-how = Chỉ ghi số chính bạn đọc được.
# draft
read-lowest = Nhiệt độ thấp nhất trong lúc ở đúng nhiệt độ
# draft
read-degrees = Độ
# draft
read-held = Thời gian ở đúng nhiệt độ
# draft
read-pressure = Áp suất, nếu máy có hiện
# draft
read-unit = Đơn vị áp suất
# draft
unit-kpa-abs = kPa tuyệt đối
# draft
unit-kpa-gauge = kPa đồng hồ
# draft
unit-bar-abs = bar tuyệt đối
# draft
unit-bar-gauge = bar đồng hồ
# draft
unit-psi-gauge = psi đồng hồ
# draft
read-asks = Tôi đã đọc số này: chạm chữ ký
# draft
lift-title = Để riêng nhầm?
# draft
lift-only = Chỉ rút lại được khi để riêng nhầm. Số, dấu hay túi không đạt thì phải hấp mẻ mới.
# draft
lift-which = Những túi nào
# draft
lift-why = Vì sao
# draft
lift-mistake = để riêng nhầm
# draft
lift-paperwork = chỉ thiếu giấy tờ, bây giờ đã có
# draft
lift-asks = Rút lại: chạm chữ ký

## Ready
# draft
ready-title = Sẵn sàng
# draft
ready-none = Kệ trống
# draft
ready-none-do = Túi nằm ở đây sau khi mẻ đã được kiểm và cho dùng.
# draft
use-now-until = Dùng ngay: tới { $at }
# draft
use-now-how = Theo thẻ số, trong khay có nắp. Để nguội ngoài không khí, không xả nước. Quá giờ thì tính là đồ đã dùng.
# draft
shelf-kind = { $kind }: { $count } sẵn sàng
# draft
shelf-front = Phía trước: lấy từ đây
# draft
shelf-more = và { $count } nữa
# draft
chairs-today = { $count ->
    [0] Hôm nay chưa mở túi nào
   *[other] Hôm nay đã mở { $count } túi ở ghế
}

## Chair
# draft
chair-title = Mở ở ghế
# draft
chair-which = Ghế nào?
# draft
chair-order = Mã trước, để điện thoại xuống, rửa tay, mang bao tay, rồi mở trước mặt khách.
# draft
chair-look = Coi: khô? nguyên? dấu đổi màu?
# draft
chair-not-good = Không tốt?
# draft
code-label = Bốn ký hiệu trên túi
# draft
code-look = TÌM
# draft
code-clear = xóa
# draft
code-other = Túi khác
# draft
pouch-released = Cho dùng
# draft
opened-asks = MỞ Ở ĐÂY: chạm chữ ký
# draft
opened-asks-chair = MỞ ở ghế { $chair }: chạm chữ ký
# draft
code-keys = Phím cho bốn ký hiệu
# draft
camera-start = MÁY ẢNH: coi mã
# draft
camera-picture = Hình máy ảnh thấy
# draft
camera-stop = Tắt máy ảnh
# draft
camera-looking = Để mã vuông vô trong hình.
# draft
camera-refused = Ở đây không dùng được máy ảnh. Chụp một tấm hình, hoặc chạm bốn ký hiệu.
# draft
photo-label = Hình chụp mã vuông
# draft
photo-read = ĐỌC HÌNH
# draft
photo-not-kept = Hình chỉ đọc ở đây, không giữ lại.
# draft
photo-no-picture = Ở đây không đọc được hình này.
# draft
photo-too-large = Hình quá lớn.
# draft
photo-no-code = Không thấy mã trong hình.
# draft
photo-other-code = Đó là mã, nhưng không phải túi của tiệm.
# draft
photo-several = Trong hình có hơn một túi.
# draft
photo-again = Chưa ghi gì. Chụp một túi thôi, gần hơn, đủ sáng, dạng JPEG hoặc PNG. Hoặc chạm bốn ký hiệu.
# draft
after-title = Đã mở trước đó: nối vô bây giờ
# draft
after-when = Đã mở lúc nào?
# draft
after-minutes = khoảng { $minutes } phút trước
# draft
after-asks = NỐI SAU: chạm chữ ký
# draft
need-another = Cần bộ khác
# draft
another-title = Cần bộ khác
# draft
another-used = Đã mở: tính là đồ đã dùng. Bỏ vô thùng đồ dơ.
# draft
another-none = Không có bộ { $kind } nào sẵn sàng
# draft
another-none-do = Dùng đồ xài một lần, hoặc hỏi ở bồn rửa. Đồ chưa kiểm không đưa tới khách.
# draft
another-take = LẤY { $code }
# draft
blood-title = Có máu?
# draft
blood-1 = Ngừng lại. Nói chuyện gì đã xảy ra.
# draft
blood-2 = Mang bao tay mới.
# draft
blood-3 = Rửa vết thương bằng nước, ép gạc sạch, rồi băng lại.
# draft
blood-4 = Cầm máu: chỉ dùng gói xài một lần. Không bao giờ dùng chung cây hay chai.
# draft
blood-5 = Đồ nghề bỏ vô thùng đồ dơ, đồ xài một lần bỏ vô rác.
# draft
blood-6 = Rửa và khử trùng chỗ dính máu. Cởi bao tay, rửa tay.
# draft
blood-7 = Ghi dòng sự cố: giờ, ghế, túi, chuyện gì.
# draft
blood-exposed = Máu của người này dính vô vết thương hay mắt người kia? Gọi nhân viên y tế hoặc cơ quan y tế ngay.
# draft
blood-rules = Quy định địa phương luôn đứng trước.
# draft
stop-spare = Bộ dự phòng ở đâu?
# draft
unknown-aside = KHÔNG DÙNG: tôi có túi khác
# draft
unknown-salon = Từ tiệm khác của mình
# draft
unknown-salon-do = Sổ này không biết bên đó đã kiểm chưa. Để vô khay KHÔNG DÙNG và hỏi tiệm đó.
# draft
unknown-roll = Từ cuộn nhãn cũ
# draft
unknown-roll-do = Nhãn cũ không chứng minh mẻ nào. Mở ra, rửa lại, lau khô, túi mới, nhãn mới.

## Labels
# draft
labels-title = Mã và nhãn
# draft
labels-none = Lần đó không có túi nào.
# draft
labels-print = In
# draft
labels-hand = Không có máy in? Viết mã lên mép túi hoặc mặt nhựa bằng bút mềm. Đừng viết lên mặt giấy.
# draft
labels-steam = Nhãn văn phòng không chịu được hơi nước. Thử ba nhãn trong ba mẻ trước.
# draft
labels-stock = Loại nhãn
# draft
labels-letter = giấy Letter, 30 nhãn
# draft
labels-a4 = giấy A4, 21 nhãn
# draft
labels-roll = cuộn, 25 × 25 mm
# draft
labels-start = Nhãn đầu tiên còn trên tờ
# draft
labels-show = Xem
# draft
label-sentence = Vô túi { $day }. Coi: khô? nguyên?
# draft
print-page = trang { $page }/{ $of }
# draft
print-printed = In { $at }
# draft
print-scale = 50 mm. Nếu không đúng, in lại ở 100 %.
# draft
print-stock = Nhãn văn phòng không chịu được hơi nước: thử ba nhãn trước.
# draft
print-machine = Máy
# draft
print-run = Mẻ
# draft
print-machine-short = M
# draft
print-run-short = Mẻ
# draft
labels-refused = Không vẽ được nhãn. Viết mã bằng tay; mã vẫn dùng được.

## Log
# draft
log-title = Sổ ghi
# draft
log-empty = Chưa ghi gì.
# draft
log-later = ghi sau: { $at }
# draft
log-linked = nối sau: { $at }
# draft
log-undone = đã rút lại
# draft
log-older = Cũ hơn
# draft
log-newest = Mới nhất
# draft
log-station = trạm { $station }
# draft
log-program = tự động
# draft
log-verify = Mỗi dòng nối với dòng trước. Lệnh steamside verify cho biết có dòng nào bị sửa không.
# draft
go-recall = Thu hồi

## Recall
# draft
recall-title = Thu hồi
# draft
recall-how = Từ mẻ sau lần thử bào tử tốt cuối cùng tới lúc máy ngưng dùng.
# draft
recall-authority = Cơ quan y tế dẫn dắt. Gọi họ trước khi gọi khách. Danh sách này cho biết ai đã tới, không nói gì về rủi ro.
# draft
recall-machine = Máy hấp
# draft
recall-from = Từ ngày
# draft
recall-to = Tới ngày
# draft
recall-do = Xem danh sách
# draft
recall-runs = { $count } mẻ
# draft
recall-shelf = { $count } túi chưa mở: lấy khỏi kệ
# draft
recall-unlinked = { $count } túi mở mà không ghi lượt khách
# draft
recall-gone = { $count } túi đã ra khỏi vòng
# draft
recall-visits = { $count } lượt khách
# draft
recall-date = Ngày
# draft
recall-time = Giờ
# draft
recall-chair = Ghế
# draft
recall-code = Mã
# draft
recall-of-run = Mẻ
# draft
recall-start-unknown = Mẻ để tính từ đó không có trong sổ: mọi thứ đều nằm trong danh sách.
# draft
recall-nothing = Không có gì bị thu hồi.
# draft
recall-from-run = Thu hồi từ mẻ này trở đi
# draft
recall-set-aside = KHÔNG DÙNG: để riêng hết

## Unclaimed
# draft
claim-title = Đây là mẻ nào?
# draft
claim-how = Không đoán. So đồng hồ của máy với lúc bắt đầu mẻ.
# draft
claim-no-clock = Bản ghi không có giờ.
# draft
claim-taken = Nhận lúc
# draft
claim-none = Không có mẻ nào hợp mà thiếu bản ghi. Chạy một mẻ, hoặc để bản ghi ở đây.
# draft
claim-asks = Mẻ này: chạm chữ ký
# draft
claim-done = Bản ghi này đã thuộc một mẻ.

## Setup
# draft
setup-title = Cài đặt
# draft
setup-machines = Máy hấp
# draft
setup-machine-add = Thêm máy
# draft
setup-signs = Chữ ký
# draft
setup-signs-how = Chữ ký là của riêng bạn: chữ cái đầu và một từ, không ghi tên đầy đủ. Chạm vào là làm và ký cùng lúc.
# draft
setup-sets = Bộ dụng cụ
# draft
setup-sets-how = Đếm một lần. Từ đó thùng đồ dơ được tính ra.
# draft
setup-languages = Ngôn ngữ
# draft
setup-zone = Múi giờ: { $zone }
# draft
setup-no-device = Công cụ này cho thấy bản ghi chứng minh gì và người ta thấy gì. Nó không cho thấy điều không ai biết được.
# draft
first-all = Cài mọi thứ khác
# draft
machine-number = Số trên cửa máy
# draft
machine-air = Máy đuổi khí ra cách nào?
# draft
air-vacuum = bằng bơm hút
# draft
air-gravity = hơi nước đẩy ra
# draft
air-not-known = chưa biết
# draft
machine-files = máy ghi tập tin cho mỗi mẻ
# draft
machine-no-files = không có tập tin
# draft
machine-most = khay đã thử với { $most } túi
# draft
machine-most-not-known = chưa biết số túi tối đa
# draft
machine-most-ask = Số túi nhiều nhất mà khay đã được thử
# draft
machine-add = Thêm máy này
# draft
person-left = Không còn làm ở đây
# draft
person-left-asks = Bỏ chữ ký này: chạm chữ ký của bạn
# draft
sets-kind = { $kind }: có { $owned }
# draft
sets-new = Thêm loại bộ khác
# draft
sets-kind-label = Loại, chữ thường
# draft
sets-kind-example = manicure
# draft
sets-owned = Tiệm có bao nhiêu
# draft
sets-used = Đang trong thùng đồ dơ
# draft
sets-washed = Đã rửa, chưa vô túi
# draft
sets-asks = Đã đếm: chạm chữ ký
# draft
language-own = ngôn ngữ gốc của các dòng chữ
# draft
language-drafts = { $drafts } trong { $lines } dòng còn là bản nháp: chưa có người trong nghề nói tiếng mẹ đẻ này đọc lại
# draft
language-checked = cả { $lines } dòng đã được người trong nghề đọc
# draft
language-partial = mới có { $lines } trên { $all } dòng, đều là bản nháp; phần còn lại bằng tiếng Anh
# draft
language-draft = (bản nháp)

## Lines of the log
# draft
line-washed = Đã rửa { $count } bộ ({ $kind }).
# draft
line-packed = Đã vô túi { $count } bộ ({ $kind }).
# draft
line-started = { $run } bắt đầu với { $count } túi.
# draft
line-unloaded = { $run }: đã lấy ra khỏi máy.
# draft
line-taken = Đã nhận bản ghi, { $count } chu trình.
# draft
line-claimed = Bản ghi thuộc { $run }.
# draft
line-judged = { $run }: { $outcome } ({ $known }).
# draft
line-looked = Đã coi { $run }.
# draft
line-looked-inner = Chỉ thị bên trong chưa tới điểm cuối.
# draft
line-looked-marks = Dấu không đổi màu: { $what }.
# draft
line-looked-wet = Ướt: { $what }.
# draft
line-looked-torn = Rách: { $what }.
# draft
line-looked-dropped = Bị rớt: { $what }.
# draft
line-released = { $run }: cho dùng { $count } túi.
# draft
line-set-aside = Để riêng: { $what }. { $why }.
# draft
line-lifted-mistake = Rút lại việc để riêng: { $what }. Do nhầm.
# draft
line-lifted-paperwork = Rút lại việc để riêng: { $what }. Trước đó thiếu giấy tờ.
# draft
line-opened = Đã mở { $what }.
# draft
line-opened-chair = Đã mở { $what } ở ghế { $chair }.
# draft
line-apart = Đã tháo ra: { $what }.
# draft
line-undone = Một dòng trước đã được rút lại.
# draft
line-opened-book = Mở sổ. Múi giờ { $zone }.
# draft
line-zone = Múi giờ: { $zone }.
# draft
line-joined = { $sign } làm ở đây.
# draft
line-left = { $sign } không còn làm ở đây.
# draft
line-machine = Có { $machine }: đuổi khí { $air }.
# draft
line-clock = Đồng hồ của { $machine } nhanh { $ahead }.
# draft
line-reads = Cách đọc bản ghi của { $machine }: { $what }.
# draft
line-out = { $machine } ngưng dùng.
# draft
line-back = { $machine } dùng lại.
# draft
line-owned = { $kind }: đếm được { $count } bộ.
# draft
line-counted = { $kind }: đếm được { $used } đã dùng, { $washed } đã rửa.

## Not done
# draft
refused-title = Chưa làm
# draft
refused-heading = Việc này chưa được làm
# draft
refused-safe = Chưa ghi gì. Mọi thứ vẫn như cũ.
# draft
refused-do = Trở lại và coi lại.
# draft
refused-no-sign = Chưa có chữ ký.
    .do = Trở lại và chạm chữ ký của bạn.
# draft
refused-no-such-act = Không có việc này.
# draft
refused-no-such-page = Không có trang này, hoặc điều đó không có trong sổ.
    .do = Trở lại BÂY GIỜ.
# draft
refused-no-such-person = Chữ ký đó không có trong sổ.
    .do = Trở lại và chạm chữ ký của bạn.
# draft
refused-no-such-machine = Máy đó không có trong sổ.
# draft
refused-no-such-pouch = Túi đó không có trong sổ.
    .safe = Chưa ghi gì. Đừng dùng túi này.
# draft
refused-no-such-run = Mẻ đó không có trong sổ, hoặc đã được rút lại.
# draft
refused-no-such-record = Bản ghi đó không có trong sổ.
# draft
refused-nothing-chosen = Chưa chọn gì.
    .do = Trở lại và chọn ít nhất một.
# draft
refused-nothing-counted = Số đếm là không.
    .do = Trở lại và đếm lại.
# draft
refused-too-many = Nhiều hơn { $most } trong một lần.
    .do = Coi lại số. Nếu đúng, ghi làm hai lần.
# draft
refused-field-missing = Còn thiếu: { $field }.
    .do = Trở lại và điền vô.
# draft
refused-field-misread = Không đọc được: { $field }.
    .do = Trở lại và ghi lại: số bằng chữ số, chữ thường.
# draft
refused-not-to-hand = Túi { $code } đang trong máy, đã mở hoặc đã ra khỏi vòng.
# draft
refused-opened-before = Lúc đó túi { $code } chưa được cho dùng.
    .do = Quay lại và chọn giờ trễ hơn. Nếu đã mở trước khi cho dùng, để riêng ra.
# draft
refused-machine-number = Máy có số từ 1 tới 99.
# draft
refused-number-taken = Đã có máy { $machine }.
    .do = Trở lại và cho số kế tiếp.
# draft
refused-clock-offset = Hơn một năm thì không phải đồng hồ nhanh.
    .do = So lại đồng hồ của máy với trang này.
# draft
refused-machine-out = Máy { $machine } đang ngưng dùng.
    .safe = Chưa ghi gì. Đừng chạy máy này.
    .do = Dùng máy khác.
# draft
refused-machine-full = Máy { $machine } đang có một mẻ.
    .do = Lấy mẻ đó ra trước: chạm chữ ký dưới mẻ đó.
# draft
refused-nothing-inside = Chưa chọn túi nào.
    .do = Trở lại và chọn túi vô máy.
# draft
refused-not-bagged = Túi { $code } không phải túi chờ máy.
    .do = Coi lại mã trên túi.
# draft
refused-over-tested = Hơn { $most } túi: khay chưa được thử với nhiều như vậy.
    .safe = Chưa ghi gì. Khay đầy quá thì túi bị ướt.
    .do = Lấy bớt ra, hoặc trở lại và báo là bạn biết.
# draft
refused-already-unloaded = Mẻ đó đã lấy ra khỏi máy.
    .do = Kiểm tiếp.
# draft
refused-not-unloaded = Đồ còn trong máy.
    .safe = Chưa cho dùng gì.
    .do = Lấy ra trước: chạm chữ ký dưới mẻ.
# draft
refused-no-numbers = Mẻ này chưa có số.
    .safe = Chưa cho dùng gì. Đừng dùng các túi này.
    .do = Nhận bản ghi, hoặc đọc ba số trên màn hình máy.
# draft
refused-nothing-to-check = Mẻ này không còn túi nào chờ kiểm.
# draft
refused-not-in-this-run = Có túi không thuộc mẻ này.
    .safe = Chưa cho dùng gì.
    .do = Coi lại mã trên túi.
# draft
refused-which-mark = Dấu nào không đổi màu?
    .safe = Chưa cho dùng gì. Đừng dùng các túi này.
    .do = Trở lại và chọn túi. Không biết túi nào? Để riêng cả mẻ.
# draft
refused-which-wet = Túi nào ướt, rách hay bị rớt?
    .safe = Chưa cho dùng gì. Đừng dùng các túi này.
    .do = Trở lại và chọn túi. Không biết túi nào? Để riêng cả mẻ.
# draft
refused-no-talking-back = Bản ghi cho thấy số không đạt. Đọc số bằng mắt không thay đổi điều đó.
    .safe = Chưa cho dùng gì. Đừng dùng các túi này.
    .do = Mở ra, rửa lại, lau khô, túi mới, dấu mới, mẻ mới.
# draft
refused-not-stopped = Túi { $code } không bị để riêng.
# draft
refused-no-way-back = Túi { $code } không đạt số, dấu hoặc lúc coi.
    .safe = Vẫn để riêng. Đừng dùng.
    .do = Mở ra, rửa lại, lau khô, túi mới, dấu mới, mẻ mới.
# draft
refused-undone-already = Việc đó đã được rút lại rồi.
# draft
refused-nothing-to-undo = Không có gì để rút lại.
# draft
refused-no-undo = Việc này không rút lại bằng một lần chạm được.
    .do = Nó vẫn nằm trong sổ. Nếu sai, đếm lại hoặc để riêng.
# draft
refused-run-has-record = Mẻ đó đã có bản ghi.
# draft
refused-record-claimed = Bản ghi đó đã thuộc một mẻ.
# draft
refused-record-deleted = Tập tin của bản ghi đó đã bị xóa.
    .safe = Chưa ghi gì. Điều đã xét trước vẫn đúng.
    .do = Nhận lại tập tin.
# draft
refused-record-unreadable = Không đọc được tập tin đó như một bản ghi.
    .safe = Chưa cho dùng gì. Đừng dùng các túi này.
    .do = Đọc ba số trên màn hình máy, hoặc hấp lại.
# draft
refused-sign-length = Chữ ký có từ 1 tới { $most } ký tự.
    .do = Trở lại: chữ cái đầu và một từ.
# draft
refused-sign-taken = Chữ ký { $sign } đã có người dùng.
    .do = Trở lại và chọn từ khác.
# draft
refused-no-file = Chưa chọn tập tin.
    .do = Trở lại và chọn tập tin từ máy.
# draft
refused-empty-file = Tập tin đó trống.
    .do = Chép lại từ máy.
# draft
refused-large-file = Tập tin đó lớn hơn { $most } MB.
    .do = Chọn bản ghi của một mẻ.
# draft
refused-upload-cut = Tập tin tới không trọn.
    .do = Gửi lại.
# draft
refused-zone = { $zone } không phải tên múi giờ.
    .do = Viết như America/Chicago.
# draft
refused-folder = Không dùng được thư mục: { $why }.
    .do = Chọn thư mục mà chương trình được phép ghi.
# draft
trouble-title = Chương trình không chạy tiếp được
# draft
trouble-safe = Những gì đã ghi trước vẫn an toàn. Lần chạm vừa rồi có thể chưa được ghi.
# draft
trouble-do = Mở BÂY GIỜ và coi có chưa. Nếu bị lại, chạy lại chương trình.

# draft
refused-no-answer = Kiểm tra thì phải có câu trả lời.
# draft
refused-two-answers = Hai câu trả lời trái nhau: tất cả tốt, và có cái không.
    .do = Xem lại và trả lời một lần. Chưa cho dùng gì cả.
# draft
refused-undo-late = Trễ rồi, không lấy lại được.
    .do = Ghi điều đúng bây giờ; sổ giữ cả hai.
# draft
refused-undo-moved-on = Đã có việc khác sau đó nên không lấy lại được.
    .do = Để riêng những gì không được dùng.
# draft
refused-clock-far = Giờ trong bản ghi này ({ $clock }) cách xa lúc bắt đầu mẻ đó.
    .do = Nếu giờ của máy sai, chỉnh ở trang MÁY HẤP trước. Nếu không, đây là bản ghi của mẻ khác.
# draft
refused-not-a-run = Bản ghi này là thử rò rỉ, không phải một mẻ.

# draft
unclaimed-more = Còn { $count } bản ghi chưa thuộc mẻ nào

# draft
refused-no-altitude = Áp suất này tính từ không khí, mà chưa biết tiệm nằm cao bao nhiêu.
    .do = Ghi độ cao so với mặt biển một lần ở trang MÁY HẤP, trong phần riêng của máy. Rồi nhập lại các số.

## Kế hoạch trong ngày
# draft
plan-sets = { $count } bộ { $kind }
# draft
plan-and = { $one } và { $other }
# draft
plan-run-needed = Chạy chu trình { $cycle } trên máy { $machine } lúc { $time } với { $sets }. Cần lúc { $when }: { $missing }.
# draft
plan-run-tomorrow = Chạy chu trình { $cycle } trên máy { $machine } lúc { $time } với { $sets }. Cần cho sáng mai: { $missing }.
# draft
plan-run-reserve = Chạy chu trình { $cycle } trên máy { $machine } lúc { $time } với { $sets }: để dự trữ.
# draft
plan-unmet = Thiếu lúc { $time }: { $sets }.
# draft
plan-way-single-use = Lúc { $time } dùng bộ dùng một lần thay cho { $sets }.
# draft
plan-way-move = Dời lịch hẹn { $time } sang { $to }.
# draft
plan-way-earlier = Bắt đầu sớm hơn { $minutes } phút.
# draft
plan-way-machine = Thêm một máy như { $machine }.
# draft
plan-way-person = Thêm một người rửa dụng cụ.
# draft
plan-way-all = Khi đó không ai phải chờ.
# draft
plan-way-part = Khi đó ít người phải chờ hơn.
# draft
kind-manicure = làm móng tay
# draft
kind-pedicure = làm móng chân
# draft
kind-efile-bits = đầu mài
# draft
kind-bits = đầu mài
# draft
kind-nippers = kềm
# draft
kind-foot-kit = chăm sóc chân
# draft
kind-art-tools = vẽ móng
# draft
cycle-fast = nhanh
# draft
cycle-middle = vừa
# draft
cycle-long = dài
# draft
plan-title = Kế hoạch hôm nay
# draft
plan-fault = Không lên được kế hoạch cho hôm nay.
# draft
plan-fault-do = Xem các con số
# draft
plan-none = Hôm nay chưa có gì để lên kế hoạch.
# draft
plan-none-do = Thêm lịch hẹn hoặc giờ làm, rồi ngày sẽ được lên kế hoạch.
# draft
go-visits = Lịch hẹn
# draft
go-sets = Cần bao nhiêu bộ
# draft
go-plan = Kế hoạch hôm nay
# draft
plan-runs = Các mẻ cần chạy
# draft
plan-no-runs = Không cần chạy mẻ nào.
# draft
plan-dropped = Không cần nữa: chu trình { $cycle } trên máy { $machine } lúc { $time }.
# draft
plan-accept = Đồng ý kế hoạch này
# draft
plan-accept-changes = Đồng ý các thay đổi này
# draft
plan-spares-out = Dùng cả bộ dự phòng: nếu giữ lại thì sẽ có người phải chờ.
# draft
plan-tape = Hình vẽ cả ngày
# draft
plan-tape-alt = { $visits } lịch hẹn, { $runs } mẻ. Danh sách ở trên nói cùng điều đó.
# draft
plan-chair = Ghế { $chair }
# draft
plan-machine = Máy { $number }
# draft
plan-works = Ngày hôm nay ổn: không ai phải chờ.
# draft
plan-works-known = Theo những gì đã biết thì ngày hôm nay ổn: không ai phải chờ.
# draft
plan-short-tomorrow = Hôm nay ổn. Sáng mai thiếu { $count } bộ.
# draft
plan-somebody-waits = Sẽ có người phải chờ.
# draft
plan-ways = Làm gì thì đỡ?
# draft
plan-unknown = { $count } lịch hẹn chưa có dịch vụ: phần cần dùng chưa nằm trong kế hoạch.
# draft
plan-proven-not = Chưa chứng minh được là không có kế hoạch nào tốt hơn.
# draft
plan-proven-unmet = Đã chứng minh: không kế hoạch nào để ít người chờ hơn.
# draft
plan-proven-short = Đã chứng minh: không kế hoạch nào để ít người chờ hơn hay để sẵn nhiều hơn cho ngày mai.
# draft
plan-proven-runs = Đã chứng minh: không kế hoạch nào để ít người chờ hơn, để sẵn nhiều hơn cho ngày mai, hay cần ít mẻ hơn.
# draft
plan-new = Mới
# draft
plan-in = sau { $minutes } phút
# draft
plan-where-from = Các con số từ đâu ra
# draft
plan-wash-time = Rửa một bộ: ở đây { $median } phút, một nửa số lần từ { $low } đến { $high } (tính từ { $count } lần).
# draft
plan-wash-time-typical = Rửa một bộ: số cài đặt; trong sổ còn quá ít lần để biết.
# draft
plan-pack-time = Đóng gói một bộ: ở đây { $median } phút, một nửa số lần từ { $low } đến { $high } (tính từ { $count } lần).
# draft
plan-pack-time-typical = Đóng gói một bộ: số cài đặt; trong sổ còn quá ít lần để biết.
# draft
plan-hands-rota = Người làm: giờ làm trong sổ, trừ lịch hẹn và giờ ăn trưa.
# draft
plan-hands-assumed = Người làm: chưa ai ghi giờ làm, nên coi như cả nhóm có mặt.
# draft
plan-order-salon = Trước hết không ai phải chờ, rồi đến ngày mai, rồi càng ít bộ không sấy càng tốt, rồi ít mẻ; bộ để qua đêm được sấy đủ trước khi tiết kiệm tiền.
# draft
plan-no-claim = Kế hoạch nói khi nào chạy, không bao giờ nói một mẻ được dùng.
# draft
ways-title = Làm gì thì đỡ
# draft
ways-heading = Mỗi cách đều đã được lên kế hoạch, không phải đoán.
# draft
ways-none = Chưa cách nào đã thử đủ giúp.
# draft
ways-known = Tính ra. Có thể còn cách khác chưa thử ở đây.
# draft
refused-plan-is-old = Kế hoạch không còn khớp với các máy. Chưa ghi gì cả. Hãy mở lại kế hoạch.

## Visits, services, working times
# draft
visits-title = Lịch khách
# draft
visits-add = Thêm khách: chọn dịch vụ, rồi giờ
# draft
visits-no-services = Chưa có dịch vụ nào. Mỗi dịch vụ cho biết cần những bộ nào.
# draft
visits-when = { $service }: mấy giờ?
# draft
visits-chair = Ghế (có thể để trống)
# draft
visits-today = Hôm nay
# draft
visits-tomorrow = Ngày mai
# draft
visits-count = { $count } lượt khách
# draft
visits-unknown = chưa rõ dịch vụ
# draft
visits-unknown-how = Chưa rõ dịch vụ thì chưa tính bộ nào. Hãy chọn dịch vụ, hoặc đưa tệp lịch vào đây một lần.
# draft
visits-which = Dịch vụ
# draft
visits-choose = Chọn
# draft
visits-say = Đúng rồi
# draft
visits-closed = Ngày này đóng cửa.
# draft
visits-open-after-all = Vẫn mở cửa
# draft
visit-booked = đã hẹn
# draft
visit-cancelled = đã hủy
# draft
visit-missed = không tới
# draft
visit-late-by = trễ { $count } phút
# draft
visit-put-back = Trễ +{ $count } phút
# draft
visit-did-not-come = Không tới
# draft
visit-call-off = Đã hủy
# draft
chair-number = ghế { $chair }
# draft
rota-title = Ai làm
# draft
rota-none = Chưa ghi ai làm hôm nay và ngày mai. Kế hoạch khi đó tính tất cả những người ký tên ở đây.
# draft
rota-add = Ghi ai làm lúc nào
# draft
rota-lunch = nghỉ trưa
# draft
rota-not = Không làm
# draft
rota-day = Ngày
# draft
rota-from = Từ
# draft
rota-to = Đến
# draft
rota-lunch-from = Nghỉ trưa từ
# draft
rota-lunch-to = Nghỉ trưa đến
# draft
rota-weeks = Lặp lại trong bao nhiêu tuần sau
# draft
rota-who = Ai?
# draft
bring-title = Tệp lịch
# draft
bring-how = Tệp lịch (.ics) hoặc bảng hẹn (.csv). Tên khách không vào sổ: sổ chỉ giữ giờ và dịch vụ.
# draft
bring-file = Tệp
# draft
bring-do = Đưa vào
# draft
brought-title = Tệp này đã thay đổi gì
# draft
brought-booked = { $count } lượt khách mới
# draft
brought-changed = { $count } lượt khách thay đổi
# draft
brought-off = { $count } lượt khách đã hủy
# draft
brought-same = { $count } lượt khách đã có sẵn
# draft
brought-names = Tiêu đề chỉ hiện trên trang này. Sổ không giữ lại.
# draft
ask-how = Chọn những chữ chỉ dịch vụ, không có tên khách, và chọn dịch vụ. Lần sau sẽ tự biết.
# draft
ask-no-services = Hãy ghi các dịch vụ trước; rồi đưa tệp vào lần nữa.
# draft
ask-count = { $count } lượt khách, ví dụ
# draft
ask-words = Hoặc gõ các chữ đó
# draft
ask-later = hỏi lại lần khác
# draft
ask-no-visit = không phải khách: không cần bộ nào
# draft
ask-do = Ghi các câu trả lời
# draft
closed-title = Nguyên ngày
# draft
closed-asks = “{ $title }”, từ { $from } đến { $to }: tiệm có đóng cửa không?
# draft
closed-do = Đóng cửa
# draft
odd-title = Không đưa vào được
# draft
odd-count = { $count } mục bị bỏ ra.
# draft
odd-zone = không rõ “{ $zone }” là múi giờ nào
# draft
odd-rule = không theo được quy tắc lặp lại
# draft
odd-time = không rõ lúc nào
# draft
odd-do = Hãy ghi tay những mục này, trước hết là của hôm nay.
# draft
services-title = Dịch vụ và số liệu
# draft
services-how = Dịch vụ cho biết làm bao lâu và cần bộ nào. Kế hoạch trong ngày dựa vào đó.
# draft
service-add = Dịch vụ mới
# draft
service-word = Tên dịch vụ
# draft
service-minutes = Phút
# draft
service-needs = Bộ cần cho một khách
# draft
service-weight = Thiếu một bộ thì phiền tới đâu (1 đến 9)
# draft
service-basin = Rửa bồn chân, phút (0: không có)
# draft
service-keep = Ghi lại
# draft
service-end = Không làm nữa
# draft
minutes-count = { $count } phút
# draft
hands-title = Làm tay ở đây mất bao lâu
# draft
hands-wash = Rửa, lau khô, xem lại, một bộ
# draft
hands-pack = Vào túi, một bộ
# draft
hands-spread = giữa là { $median } phút; một nửa số lần nằm giữa { $lower } và { $upper } ({ $count } lần)
# draft
hands-none = chưa đo được
# draft
hands-how = Tính từ các lần chạm: từ lần chạm trước tới lần báo xong. Vì vậy thường dài hơn thật, không ngắn hơn.
# draft
kind-figures-title = Các loại bộ
# draft
kind-mass = Nặng một bộ, g
# draft
kind-hand = Làm tay một bộ, phút
# draft
kind-pouch = Giá một túi, xu
# draft
kind-target = Sẵn sàng lúc hết ngày
# draft
kind-spares = Bộ dự phòng, không hứa cho khách nào
# draft
machine-figures-title = Chương trình của các máy
# draft
machine-warm = Còn nóng trong, phút
# draft
programme-more = Thêm một chương trình
# draft
programme-word = Tên (để trống: không có)
# draft
programme-cold = Phút khi máy nguội
# draft
programme-warm = Phút khi máy nóng
# draft
programme-mass = Nặng nhất, g
# draft
programme-load = Xếp vào, phút
# draft
programme-unload = Lấy ra, phút
# draft
programme-cool = Để nguội, phút
# draft
programme-cost-cold = Giá khi máy nguội, xu
# draft
programme-cost-warm = Giá khi máy nóng, xu
# draft
programme-drying = Sấy khô
# draft
programme-wrapped = Nhận bộ trong túi
# draft
drying-is-none = không: dùng ngay
# draft
drying-is-short = ngắn
# draft
drying-is-full = đầy đủ
# draft
rules-title = Điều chung cho mọi kế hoạch
# draft
rules-how = Thời gian và điều gì trước
# draft
rules-passive = Bộ rửa xong để khô trước khi gói, phút
# draft
rules-immediate = Bộ không sấy phải mở trong, phút
# draft
rules-order = Điều gì trước
# draft
order-salon = Không ai phải chờ; bộ để qua đêm phải khô, rồi mới tính tiết kiệm
# draft
order-comparing = Thứ tự đã công bố, để so sánh
# draft
figures-typical = số thường gặp, tới khi bạn tự đặt
# draft
figures-keep = Ghi số liệu này
# draft
line-visit-booked = Hẹn lúc { $at }: { $service }.
# draft
line-visit-moved = Một hẹn dời sang { $at }.
# draft
line-visit-is = Một hẹn là { $service }.
# draft
line-visit-late = Một hẹn bắt đầu trễ { $count } phút.
# draft
line-visit-off = Một hẹn đã hủy.
# draft
line-visit-missed = Một khách không tới.
# draft
line-shift = { $sign } làm { $from } đến { $to }.
# draft
line-shift-ended = Bỏ một giờ làm.
# draft
line-closed = Đóng cửa { $day }.
# draft
line-open-again = Vẫn mở cửa { $day }.
# draft
line-key = Đã tạo khóa để nhận ra tệp lịch.
# draft
line-service = Dịch vụ { $service }: { $count } phút, cần { $needs }.
# draft
line-service-ended = Không làm { $service } nữa.
# draft
line-learnt = Một cụm chữ trong tiêu đề nghĩa là { $service }.
# draft
line-learnt-no-visit = Một cụm chữ trong tiêu đề nghĩa là: không phải khách.
# draft
line-kind-figures = Số liệu riêng cho { $kind }.
# draft
line-machine-figures = Chương trình riêng cho { $machine }.
# draft
line-day-rules = Đã đặt điều chung cho mọi kế hoạch.
# draft
line-plan = Đã nhận kế hoạch { $count } mẻ.
# draft
line-implement-set = Dụng cụ { $what }: { $length } × { $width }, { $mass }.
# draft
line-implement-ended = Không dùng { $what } nữa.
# draft
line-set-of = Một bộ { $kind } gồm { $pieces }.
# draft
line-pouch-set = Cỡ túi { $what }: { $width } × { $length }.
# draft
line-pouch-ended = Không giữ cỡ túi { $what } nữa.
# draft
line-inside-set = Đã đo bên trong { $machine }: { $count } khay.
# draft
line-tray-weighed = Đã cân khay: { $grams } với { $sets }.
# draft
line-programme-set = { $programme } trên { $machine }, theo sách hướng dẫn: { $temperature } trong { $hold } giây, sấy { $count } phút.
# draft
refused-no-calendar = Tệp này không phải lịch hay bảng hẹn đọc được.
    .do = Hãy xuất lại dạng .ics, hoặc bảng có ngày, giờ và dịch vụ.
# draft
refused-one-calendar = Mỗi lần một tệp lịch.
    .do = Trở lại và chọn một tệp.
# draft
refused-no-such-service = Sổ này không có dịch vụ đó.
# draft
refused-no-such-visit = Sổ này không có hẹn đó.
# draft
refused-visit-over = Hẹn đó đã hủy hoặc khách đã không tới.
# draft
refused-too-late = Một hẹn chỉ lùi tối đa { $most } phút.
    .do = Hãy dời trong lịch, hoặc ghi lại.
# draft
refused-off-in-calendar = Hẹn đó từ tệp lịch.
    .do = Hãy hủy trong lịch, rồi đưa tệp vào lại.
# draft
refused-phrase = Không học được những chữ này.
    .do = Trở lại và gõ vài chữ chỉ dịch vụ.
# draft
refused-said-already = Điều đó đã ghi rồi.
# draft
refused-service-taken = Đã có dịch vụ { $word }.
    .do = Trở lại và chọn tên khác.
# draft
refused-no-programme = Máy cần ít nhất một chương trình.
# draft
refused-shift = Giờ làm đó không khớp.
    .do = Trở lại: từ trước đến sau, nghỉ trưa nằm trong, tối đa mười hai tuần.
# draft
refused-no-such-shift = Sổ này không có giờ làm đó.
# draft
titles-ask = Những hẹn này cần bộ nào?
# draft
titles-which = Nghĩa là
# draft
own-title = Nên có bao nhiêu bộ
# draft
own-none = Chưa có ngày nào để tính
# draft
own-none-do = Hãy ghi hẹn cho mấy ngày tới, hoặc đưa lịch vào: ngày đông nhất trong tuần sẽ được thử nhiều lần.
# draft
own-how = Tính ra, không phải đo: ngày đông hẹn nhất, { $day }, thử { $days } lần với những chuyện có thể xảy ra.
# draft
own-kind = { $kind }: đang có { $owned }
# draft
own-now = Với { $owned } bộ, { $share } trong 100 ngày không ai phải đợi ({ $low } tới { $high }).
# draft
own-plot = Số ngày trong 100 không ai phải đợi, theo số bộ: { $kind }
# draft
own-axis = số bộ (vòng tròn: hiện nay)
# draft
own-numbers = Xem bằng số
# draft
own-enough = { $owned } bộ là đủ cho 95 trong 100 ngày.
# draft
own-enough-now = Số đang có là đủ: { $owned } bộ đủ cho 95 trong 100 ngày.
# draft
own-never-enough = Chỉ thêm bộ loại này thì không được 95 ngày tốt trong 100: còn thiếu thứ khác.
# draft
own-planned = Đã kiểm: { $days } ngày trong số đó cũng được lên kế hoạch, biết trước mọi chuyện. Theo kế hoạch { $planner } ngày ổn, không biết trước thì { $policy }.
# draft
own-buy = Mua gì khác để có thêm giờ
# draft
own-buy-set = Thêm một bộ, { $kind }:
# draft
own-buy-machine = Thêm một máy giống máy đầu:
# draft
own-buy-lunch = Nghỉ trưa dài thêm { $count } phút, có một người ở phía sau:
# draft
own-gain = thêm { $days } ngày tốt mỗi năm ({ $low } tới { $high }), bớt { $clients } khách phải đợi, { $money } mỗi năm.
# draft
own-no-gain = không thấy được lợi gì.
# draft
own-prices = Tiền mỗi năm là thiệt hại do khách đợi, trừ tiền trả mỗi ngày. Giả định: { $waiting } cho một khách phải đợi, { $lunch } mỗi ngày cho giờ trưa, { $days } ngày làm. Một bộ giá { $set }, một máy { $machine }.
# draft
own-assumed = Các ngày được dựng từ đâu
# draft
own-walk-ins = Cứ 100 hẹn có { $share } khách vãng lai, ở lại nếu sắp có người rảnh.
# draft
own-no-shows = { $share } trong 100 khách không tới.
# draft
own-late = { $share } trong 100 khách tới trễ, tối đa { $late } phút.
# draft
own-overruns = { $share } trong 100 lần làm kéo dài, tối đa { $longer } phút.
# draft
own-failed = { $share } trong 100 mẻ phải làm lại.
# draft
own-wet = { $share } trong 100 mẻ sấy ra bị ướt, phải làm lại từ đầu.
# draft
own-assumption = (giả định)
# draft
own-counted = (đếm tại đây, trong { $of })
# draft
own-begin = Đầu ngày mọi bộ đều sẵn sàng, kể cả bộ mua thêm. Máy đang hỏng không tính.

## What goes in
# draft
goes-in-title = Những gì đưa vào
# draft
goes-in-sets = Bộ dụng cụ và túi
# draft
goes-in-sets-how = Một bộ gồm những gì. Một bộ nằm trong một túi.
# draft
grams = { $grams }
# draft
bag-show = Xem túi của bộ này
# draft
scale-title = Cân cả khay đầy
# draft
scale-how = Cân cả khay đầy một lần, khi nguội và khô. Không ai phải cân từng món.
# draft
scale-grams = Tất cả, gam
# draft
scale-empty = Chỉ khay không, gam (0 nếu đã chỉnh cân về 0 với khay)
# draft
scale-open = để mở, không túi
# draft
implements-title = Dụng cụ
# draft
implements-how = Số liệu thường gặp cho đến khi bạn ghi số của mình. Lời của nhà sản xuất đứng trước.
# draft
implement-add = Thêm dụng cụ
# draft
implement-end = Không còn ở đây
# draft
implement-word = Bạn gọi nó là gì
# draft
implement-form = Hình dạng
# draft
implement-length = Dài, mm
# draft
implement-width = Rộng khi nằm trong túi, khớp mở, mm
# draft
implement-thick = Dày, mm
# draft
implement-mass = Khối lượng một cái, gam
# draft
implement-material = Làm bằng
# draft
implement-is = Nó là
# draft
implement-hinged = có khớp
# draft
implement-hollow = rỗng: có lỗ hoặc khoang
# draft
implement-single = chỉ dùng cho một khách
# draft
implement-steam = Vào hơi nước
# draft
implement-ultrasonic = Vào bể siêu âm
# draft
implement-most-c = Chịu được đến, °C
# draft
pouch-sizes-title = Cỡ túi
# draft
pouch-sizes-how = Đo một túi rỗng: chiều ngang, và từ đáy đến đường gấp.
# draft
pouch-size-add = Thêm cỡ
# draft
pouch-size-end = Không còn dùng
# draft
pouch-size-word = Bạn gọi nó là gì
# draft
pouch-size-width = Ngang, mm
# draft
pouch-size-length = Từ đáy đến đường gấp, mm
# draft
pouch-size-seam = Bề rộng mép hàn, mm
# draft
pouch-size-fold = Chừa trống dưới đường gấp, mm
# draft
pouch-size-mass = Khối lượng một cái, gam
# draft
inside-title = Buồng, khay, cách xếp
# draft
inside-how = Đo bên trong, bằng milimét. Cách xếp theo sách của máy.
# draft
inside-chamber = Buồng
# draft
chamber-round = tròn
# draft
chamber-box = hộp
# draft
inside-across = Ngang, mm
# draft
inside-high = Cao, mm
# draft
inside-depth = Từ cửa đến đáy, mm
# draft
tray-name = Khay { $tray }
# draft
tray-width = Ngang, mm
# draft
tray-depth = Từ cửa đến đáy, mm
# draft
tray-height = Chiều cao trống, mm
# draft
tray-mass = Khi rỗng, gam
# draft
rack-title = Giá đỡ
# draft
rack-places = Số chỗ (0: không có)
# draft
rack-pitch = Từ chỗ này đến chỗ kế, mm
# draft
rack-height = Túi được đứng cao bao nhiêu, mm
# draft
inside-pattern = Túi nằm thế nào
# draft
inside-face = Mặt nào hướng lên
# draft
inside-wall = Chừa đến mép khay, mm
# draft
inside-between = Chừa giữa hai túi, mm
# draft
manual-page = Trang trong sách máy
# draft
programme-set = Nhiệt độ đặt, °C
# draft
programme-hold = Thời gian ở nhiệt độ, giây
# draft
programme-pulses = Số lần hút trước
# draft
programme-dry-min = Sấy, phút
# draft
programme-dry-kpa = Áp suất thấp nhất khi sấy, kPa tuyệt đối (trống: không hút)
# draft
programme-for = Sách máy cho phép
# draft
programme-for-pouches = túi
# draft
programme-for-hollow = đồ rỗng
# draft
programme-most-pouched = Nhiều nhất trong túi, gam, theo sách máy
# draft
programme-most-open = Nhiều nhất không túi, gam, theo sách máy
# draft
tray-show = Xem khay
# draft
refused-no-such-implement = Ở đây không có dụng cụ như vậy.
    .do = Thêm nó trước, hoặc bỏ ra.
# draft
refused-implement-in-set = Bộ { $kind } có dụng cụ này.
    .do = Bỏ nó khỏi bộ đó trước.
# draft
refused-last-pouch-size = Phải còn ít nhất một cỡ túi.
    .do = Thêm cỡ khác trước.
# draft
refused-tray-lighter = Khay đầy phải nặng hơn khay rỗng.
    .do = Cân lại, khi nguội và khô.
# draft
refused-implement-measure = Một số đo là không hoặc hơn hai mét.
    .do = Đo khi nó nằm trong túi, bằng milimét.
# draft
refused-implement-mass = Một dụng cụ nặng từ một phần mười gam đến 20 kg.
    .do = Cân nó, hoặc giữ số thường gặp.
# draft
refused-implement-heat = Nhiệt nó chịu được là từ 40 đến 300 °C.
    .do = Nhà sản xuất cho biết bao nhiêu.
# draft
refused-inside-measure = Một số đo là không hoặc hơn hai mét.
    .do = Đo bên trong, bằng milimét.
# draft
refused-inside-trays = Máy có từ một đến mười hai khay.
    .do = Ghi ít nhất một khay.
# draft
refused-inside-no-rack = Xếp đứng thì cần giá.
    .do = Ghi giá có mấy chỗ, hoặc chọn cách xếp khác.
# draft
refused-inside-too-large = Các khay này không vào được buồng này.
    .do = Đo cả hai bên trong, bằng milimét.
# draft
refused-pouch-size = Túi này không còn mặt giữa mép hàn và đường gấp.
    .do = Đo một túi rỗng, bằng milimét.
# draft
tray-title = Xếp lên khay
# draft
tray-print = In để treo ở cửa máy (A5)
# draft
tray-all-in = Vào hết: { $count }
# draft
tray-some-in = { $count } trong { $of } vào được. Không thể hơn { $most }.
# draft
tray-left = Để lượt sau:
# draft
tray-unknown = Chưa biết túi nào cho: { $what }
# draft
tray-empty = Để trống.
# draft
tray-from-top = Khay { $tray } từ trên xuống
# draft
tray-mass-is = { $grams } g kể cả khay.
# draft
tray-free = Cách mép { $free }.
# draft
tray-desc = Trên đó: { $what }
# draft
paper-up = mặt giấy lên
# draft
film-up = mặt trong lên
# draft
paper-right = mặt giấy sang phải
# draft
film-right = mặt trong sang phải
# draft
lies-over = chồng lên 2,5 cm
# draft
fold-free = chừa cho đường gấp
# draft
door = cửa
# draft
pattern-flat = nằm, một lớp
# draft
pattern-on-edge = đứng trong giá
# draft
pattern-overlapped = chồng mép 2,5 cm
# draft
pattern-flat-how = Nằm một lớp, không chồng, không chạm thành.
# draft
pattern-on-edge-how = Đứng, mỗi chỗ một túi. Không tựa vào thành.
# draft
pattern-overlapped-how = Mỗi túi chồng lên túi kế khoảng 2,5 cm: giấy với giấy, mặt trong với mặt trong. Thói quen trong nghề; không tìm thấy nguồn.
# draft
pattern-page = Theo sách của máy, trang { $page }.
# draft
pattern-no-page = Đã đặt ở đây; chưa biết trang trong sách máy.
# draft
pattern-typical = Buồng thường gặp, không phải của bạn: xem sách máy và đo.
# draft
face-paper = giấy
# draft
face-film = mặt trong
# draft
tray-sheet-title = Máy { $machine }: xếp mẻ này thế nào
# draft
tray-scale = Tỷ lệ 1 : { $ratio }
# draft
tray-total = Tất cả, không kể khay: { $grams } g
# draft
bag-title = Túi: { $kind }
# draft
bag-size = { $size }, { $width } × { $length }
# draft
bag-full = Dùng { $full } % mặt túi; nhiều nhất 75 %.
# draft
bag-picture = Các món nằm trong túi thế nào
# draft
bag-split-metals = Nhiều hơn một túi: những thứ này không được chạm nhau ({ $metals }).
# draft
bag-split-full = Nhiều hơn một túi: một túi sẽ quá đầy.
# draft
bag-refused-single = chỉ dùng một lần, bỏ đi
# draft
bag-refused-steam = không bao giờ vào hơi nước
# draft
bag-refused-large = quá lớn cho mọi túi
# draft
bag-ask-maker = chỉ vào hơi nước nếu nhà sản xuất cho phép
# draft
bag-open = Mở khớp. Không món nào chạm món nào.
# draft
bag-dry = Đã rửa, khô, đã coi, đã tra dầu. Thép ướt sẽ rỉ trong túi.
# draft
bag-mark = Thấy dấu qua mặt trong. Gấp đúng đường, ép hơi ra.
# draft
metal-stainless = thép không rỉ
# draft
metal-plated = thép mạ
# draft
metal-carbon = thép thường
# draft
metal-aluminium = nhôm
# draft
metal-carbide = hợp kim cứng
# draft
metal-diamond = kim cương
# draft
material-stainless-420 = thép không rỉ, tôi cứng
# draft
material-stainless-304 = thép không rỉ
# draft
material-plated-steel = thép mạ
# draft
material-carbon-steel = thép thường
# draft
material-aluminium = nhôm
# draft
material-carbide = hợp kim cứng
# draft
material-diamond = kim cương
# draft
material-ceramic = gốm
# draft
material-glass = thủy tinh
# draft
material-silicone = silicon
# draft
material-polypropylene = nhựa
# draft
material-fibre = gỗ, giấy, mút
# draft
stands-yes = được
# draft
stands-ask-the-maker = chỉ khi nhà sản xuất cho phép
# draft
stands-never = không bao giờ
# draft
form-nippers = kềm
# draft
form-scissors = kéo
# draft
form-clippers = đồ bấm
# draft
form-tweezers = nhíp
# draft
form-stick = que, cây
# draft
form-bit = đầu mài
# draft
form-block = khối hoặc hộp
# draft
form-file = giũa
# draft
implement-cuticle-nipper = kềm cắt da
# draft
implement-toenail-nipper = kềm móng chân
# draft
implement-nail-clipper = bấm móng tay
# draft
implement-toenail-clipper = bấm móng chân
# draft
implement-cuticle-scissors = kéo cắt da
# draft
implement-tweezers = nhíp
# draft
implement-pusher = cây đẩy da
# draft
implement-curette = cây nạo
# draft
implement-nail-rasp = giũa thép
# draft
implement-foot-file-handle = cán giũa chân
# draft
implement-carbide-bit = đầu mài hợp kim
# draft
implement-diamond-bit = đầu mài kim cương
# draft
implement-ceramic-bit = đầu mài gốm
# draft
implement-mandrel = trục gắn vòng nhám
# draft
implement-bit-holder = khay đầu mài
# draft
implement-handpiece = tay cầm máy mài
# draft
implement-glass-file = giũa thủy tinh
# draft
implement-plastic-brush = bàn chải
# draft
implement-sanding-band = vòng nhám
# draft
implement-wood-stick = que gỗ
# draft
implement-toe-foam = mút tách ngón
# draft
implement-paper-file = giũa giấy
# draft
implement-buffer = đồ chà bóng
# draft
implement-foot-file-pad = miếng giũa chân
# draft
pouch-word-tiny = rất nhỏ
# draft
pouch-word-small = nhỏ
# draft
pouch-word-middle = vừa
# draft
pouch-word-large = lớn
# draft
pouch-word-huge = rất lớn
# draft
implement-plated-clipper = bấm móng thép mạ
# draft
implement-rubber-handle-pusher = cây đẩy da cán cao su
# draft
chemical-bleach = thuốc tẩy clo
# draft
chemical-iodine = i-ốt
# draft
chemical-metal-chlorides = muối clorua kim loại
# draft
chemical-acid = axit, thuốc tẩy cặn
# draft
chemical-alkali = kiềm mạnh
# draft
chemical-acetone = acetone
# draft
chemical-alcohol = cồn
# draft
chemical-peroxide = oxy già
# draft
chemical-quaternary-ammonium = amoni bậc bốn
# draft
watch-chemicals = Tránh: { $what }. Nếu lỡ dính: rửa nước ngay.
# draft
watch-single-use = Chỉ dùng cho một khách: bỏ đi, không rửa, không cho vào túi.
# draft
watch-never-steam = Không bao giờ cho vào hơi nước.
# draft
watch-ask-steam = Chỉ cho vào hơi nước nếu nhà sản xuất cho phép.
# draft
watch-never-ultrasonic = Không bao giờ cho vào bể siêu âm.
# draft
watch-ask-ultrasonic = Chỉ cho vào bể siêu âm nếu nhà sản xuất cho phép.
# draft
watch-rusts = Thép thường bị rỉ trong hơi nước.
# draft
watch-heat = Chỉ chịu được { $celsius }: không đủ cho chu trình 134 °C.
# draft
watch-apart = Để riêng với kim loại khác: { $metal } chỉ nằm với { $metal }.
# draft
watch-hinge = Mở khớp, trong bể và trong túi.
# draft
watch-hollow = Rỗng: cần máy hút khí ra trước.

## Which programme, and will it be dry
# draft
propose-line = Đề nghị: { $cycle }. { $why }
# draft
propose-none = Không có chương trình nào của máy này hợp với mẻ này.
# draft
propose-others = Vì sao không chọn chương trình khác
# draft
propose-unknown = Có bộ chưa được mô tả: khối lượng của chúng chưa tính.
# draft
why-quickest-now = Không túi, dùng ngay: nhanh nhất.
# draft
why-quickest-dries = Nhanh nhất mà vẫn dưới mức sấy khô.
# draft
why-longer-weight = Quá nặng cho thời gian sấy ngắn hơn.
# draft
why-longer-piece = Món nặng cần sấy lâu nhất.
# draft
why-longest-unknown = Chưa biết ở đây bao nhiêu thì khô: sấy lâu nhất.
# draft
no-drying-pouches = Không sấy, mà túi phải khô.
# draft
no-drying-shelf = Không sấy: không để lên kệ.
# draft
no-too-heavy-maker = Nặng hơn mức nhà sản xuất cho phép.
# draft
no-too-heavy-dry = Nặng hơn mức ra khô ở đây.
# draft
no-too-hot = Nóng hơn mức một món chịu được.
# draft
no-not-for-pouches = Sách máy không nói là dùng cho túi.
# draft
no-not-for-hollow = Sách máy không nói là dùng cho đồ rỗng.
# draft
no-gravity-hollow = Đồ rỗng, mà không biết có hút chân không.
# draft
no-gravity-times = Không hút chân không thì túi cần 30 phút ở 121 °C hoặc 15 phút ở 132 °C (CDC 2008).
# draft
no-not-in-time = Quá trễ.
# draft
change-split = Chia ra: nhiều nhất { $grams } g một lượt { $cycle }.
# draft
change-unpouched = Hoặc không túi trong { $cycle }, dùng ngay.
# draft
change-take-out = Lấy ra món không chịu được nhiệt của { $cycle }.
# draft
change-later = Hoặc chờ: { $cycle } mất { $minutes } phút.
# draft
load-weighs = Mẻ này: { $grams } g.
# draft
limit-maker-only = { $cycle }: nhà sản xuất cho { $grams } g. Chưa ai coi khô hay ướt.
# draft
limit-maker = { $cycle }: giữ mức nhà sản xuất, { $grams } g. Đã coi { $count } lần, { $wet } lần ướt.
# draft
limit-looks = { $cycle }: ở đây khoảng { $grams } g thì khô ({ $low } đến { $high }), theo { $count } lần coi, { $wet } lần ướt.
# draft
limit-guess = { $cycle }: chưa ai biết ở đây bao nhiêu thì ra khô. Xem mức trong sách máy; coi dần sẽ biết.
# draft
dry-chance = Khả năng bị ướt, tính ra: { $percent } %.
# draft
run-water = Nước, tính ra: khoảng { $middle } ml ({ $low } đến { $high }); máy nhỏ thường mất khoảng 90. Mười lượt như vậy: { $ten } lít trong bình.
# draft
start-against = Bắt đầu dù không nên. Sẽ ghi lại trong sổ.
# draft
start-picture = Xếp lên khay thế nào
# draft
refused-no-drying = Chương trình này không sấy. Túi sẽ ra ướt.
    .safe = Chưa ghi gì.
    .do = Chọn chương trình có sấy. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.
# draft
refused-gravity-hollow = Đồ rỗng, mà không biết chương trình này hút được khí ra.
    .safe = Chưa ghi gì.
    .do = Chọn chương trình sách máy cho phép với đồ rỗng. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.
# draft
refused-too-heavy = Nặng hơn mức nhà sản xuất cho phép ({ $most } g).
    .safe = Chưa ghi gì.
    .do = Lấy bớt túi ra. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.

## What goes in, more
# draft
bag-refused-measure = số đo không thể có

## On the page of the machine
# draft
machine-dries = Bao nhiêu thì ra khô

## On edge
# draft
rack-mass-is = { $grams } g kể cả giá.

## Implements
# draft
implement-change = Sửa

## Air
# draft
propose-air-unknown = Chưa ai nói máy này hút khí ra thế nào, nên coi như máy không hút chân không.

## Against the advice; what is left
# draft
tray-machine-busy = Máy này đang chạy. Khi máy trống mới xếp mẻ này vào.
# draft
refused-no-room = Không vừa hết các khay của máy này.
    .safe = Chưa ghi gì.
    .do = Lấy bớt túi ra: hình cho biết túi nào. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.
# draft
refused-piece-inside = Món này không được cho vào: { $word }.
    .safe = Chưa ghi gì.
    .do = Lấy nó ra khỏi bộ. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.
# draft
refused-too-hot = Có món không chịu được nhiệt của chương trình này.
    .safe = Chưa ghi gì.
    .do = Lấy nó ra, hoặc chọn chương trình mát hơn. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.
# draft
refused-not-for-pouches = Chương trình này không dùng cho túi.
    .safe = Chưa ghi gì.
    .do = Chọn chương trình sách máy cho phép với túi. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.
# draft
refused-below-times = Thời gian hoặc nhiệt dưới mức tối thiểu đã công bố.
    .safe = Chưa ghi gì.
    .do = Chọn chương trình khác, hoặc coi lại số đã ghi cho nó. Nếu máy đã chạy, quay lại và đánh dấu vẫn bắt đầu.
# draft
no-below-times = Thời gian hoặc nhiệt dưới mức tối thiểu đã công bố.
# draft
refused-unfit = Có số nằm ngoài mức có thể.
    .do = Coi lại số đó: { $why }
# draft
refused-not-described = Chưa ai nói bộ này gồm những gì: { $kind }.
    .do = Ghi trước, ở phần trên của trang này.
# draft
refused-weight-odd = Số này khác xa khối lượng thường gặp: khoảng { $grams } g.
    .do = Đếm lại bộ và cân lại. Nếu đúng, mô tả dụng cụ trước.
# draft
goes-in-nobody-said = chưa ai nói gồm những gì
# draft
goes-in-pieces-typical = các món như thường gặp, cho đến khi bạn ghi
# draft
left-water = Nước còn lại cuối cùng, tính ra: khoảng { $middle } g, nhiều nhất { $high } g trong mười chín trên hai mươi lần.
# draft
load-typical = Khối lượng là số thường gặp: cân thử một khay đầy.
# draft
looks-left-out = { $count } lần coi không tính được: chưa ai nói bên trong là gì.

## Drying not known
# draft
why-drying-unknown = Chưa biết ở đây bao nhiêu thì khô.

## Held bits
# draft
form-holder = khối cắm đầu mài
# draft
bag-held = Cắm trong khay: { $what }

## The strip on every page
# draft
not-joined = Mất kết nối với máy chính của tiệm từ { $at }. Màn hình vẫn như lúc đó.
# draft
strip-running = Các mẻ đang trong máy
# draft
strip-clock = THEO ĐỒNG HỒ
# draft
strip-clock-usual = THEO ĐỒNG HỒ: thường { $low } tới { $high } phút
# draft
strip-measured = ĐO ĐƯỢC: { $phase }, { $temperature }.
# draft
strip-measured-only = ĐO ĐƯỢC: { $temperature }.
# draft
strip-held = Giữ ở nhiệt độ được { $held } rồi.
# draft
strip-word = Máy báo lần cuối { $seconds } giây trước
# draft
strip-silent = Máy im { $seconds } giây.
# draft
strip-silent-long = Máy im { $minutes } phút.
# draft
phase-heating-up = đang nóng lên
# draft
phase-air-out = rút khí ra
# draft
phase-at-temperature = ở nhiệt độ
# draft
phase-steam-out = xả hơi
# draft
phase-drying = đang sấy
# draft
phase-air-in = cho khí vào

## The wall
# draft
wall-title = Trên tường
# draft
wall-front-title = Trên tường chỗ khách ngồi
# draft
go-wall = Chiếu lên tường
# draft
go-wall-front = Chiếu chỗ khách ngồi
# draft
wall-bin = Thùng: cỡ { $count }
# draft
wall-ends = tới ~{ $at }
# draft
wall-runs = đang chạy
# draft
wall-short = { $time }: thiếu { $count } { $kind }
# draft
wall-free = trống
# draft
wall-look = coi máy
# draft
wall-start-now = Chạy máy { $machine } bây giờ
# draft
wall-start-at = Chạy máy { $machine } lúc { $time }
# draft
wall-stop-some = { $count } túi của máy { $machine }

## Upkeep and counter
# draft
line-upkeep = Có việc bảo dưỡng đã làm.
# draft
line-counter = Có ghi chép tại quầy.

## Screens that are let in, what is kept while cut off, and two at once
# draft
screens-title = Các màn hình
# draft
screens-let-in = Cho một màn hình vào
# draft
screens-how = Điện thoại hay máy tính bảng chỉ cần cho vào một lần, bằng mã hiện ở đây trong mười phút.
# draft
screens-code = Hiện mã
# draft
screens-new-code = Mã khác
# draft
screens-until = Dùng được đến { $at }, cho một màn hình.
# draft
screens-square = Mã vuông có địa chỉ cho màn hình mới
# draft
screens-trust-first = Điện thoại mới trước hết mở địa chỉ này để tin máy chính:
# draft
screens-type = Quét mã vuông bằng màn hình mới, hoặc mở địa chỉ này ở đó rồi gõ mã:
# draft
screens-only-here = Hiện chỉ máy này mở được chương trình. Khởi động với --secure 0.0.0.0:7443 thì màn hình khác mới vào được.
# draft
screens-not-here = Cho màn hình vào hay ra: làm ở máy chính của tiệm, ở bàn làm việc, hoặc bằng ký hiệu của người phụ trách.
# draft
screens-known = Các màn hình đã cho vào
# draft
screens-none = Chưa có. Máy này không cần mã.
# draft
screens-since = từ
# draft
screens-heard = nghe lần cuối
# draft
screens-not-heard = chưa nghe thấy từ khi chương trình khởi động
# draft
screens-let-go = Cho ra
# draft
screen-phone = Điện thoại
# draft
screen-tablet = Máy tính bảng
# draft
screen-wall = Màn hình treo tường: chỉ để xem
# draft
screen-desk = Bàn làm việc
# draft
pair-title = Cho màn hình này vào
# draft
pair-how = Ở máy chính của tiệm, mở Cài đặt, rồi Các màn hình, và chạm “Hiện mã”. Gõ sáu ký tự vào đây.
# draft
pair-code = Sáu ký tự
# draft
pair-what = Màn hình này là gì?
# draft
pair-name = Tên của nó, nếu muốn
# draft
pair-go = Cho tôi vào
# draft
pair-wrong = Mã không đúng. Chưa có gì thay đổi. Xem lại trên máy chính rồi gõ lại.
# draft
pair-void = Sai quá nhiều lần. Mã đó không còn dùng được. Lấy mã khác ở máy chính.
# draft
pair-shut = Hiện không có mã nào. Mã đã dùng rồi hoặc đã hết giờ. Lấy mã ở máy chính.
# draft
pair-go-safe = Địa chỉ này không an toàn. Trước hết hãy tin máy chính, rồi tiếp tục ở địa chỉ an toàn.
# draft
pair-plain = Người khác trên cùng mạng có thể đọc được nội dung qua địa chỉ này, và màn hình này không giữ lại thao tác khi mất kết nối. Khởi động máy chính với địa chỉ an toàn thì tốt hơn.
# draft
trust-title = Tin máy chính
# draft
trust-how = Cách làm cho màn hình tin máy chính
# draft
trust-why = Máy chính tự làm chứng chỉ của mình. Màn hình nào tin chứng chỉ này thì trang được an toàn: máy ảnh hoạt động, và thao tác được giữ lại khi mất kết nối.
# draft
trust-match-title = So sánh trước
# draft
trust-match = Chỉ tin khi dãy ký tự này giống hệt trên màn hình của máy chính (Cài đặt, Các màn hình) và giống dãy mà điện thoại hiện ra. Nếu khác, dừng lại và hỏi người phụ trách.
# draft
trust-vouches = Với chứng chỉ này, máy chính chỉ bảo đảm cho tên của chính nó và các địa chỉ trong tiệm, ngoài ra không gì khác.
# draft
trust-fingerprint = Dấu vân (SHA-256)
# draft
trust-take = Lấy chứng chỉ
# draft
trust-profile = Điện thoại tải hồ sơ cấu hình
# draft
trust-profile-1 = Mở chứng chỉ. Điện thoại báo đã tải một hồ sơ.
# draft
trust-profile-2 = Mở cài đặt của điện thoại. Hồ sơ vừa tải ở trên cùng: cài nó.
# draft
trust-profile-3 = Sau đó tìm mục tin cậy chứng chỉ và bật chứng chỉ này lên. Thiếu bước cuối này thì không có tác dụng.
# draft
trust-storage = Điện thoại cài từ bộ nhớ
# draft
trust-storage-1 = Lấy chứng chỉ; điện thoại lưu lại.
# draft
trust-storage-2 = Trong cài đặt, tìm “chứng chỉ” và chọn cài chứng chỉ CA.
# draft
trust-storage-3 = Điện thoại sẽ cảnh báo; điều đó là đúng. Chỉ tiếp tục sau khi đã so sánh, rồi chọn tệp đã lưu.
# draft
trust-computer = Máy tính
# draft
trust-computer-1 = Trong cài đặt của trình duyệt, tìm “chứng chỉ”, rồi mục nhà cấp, rồi nhập.
# draft
trust-computer-2 = Chọn tệp và chỉ cho phép dùng với trang web.
# draft
trust-then = Sau đó mở
# draft
trust-back = Muốn bỏ thì xóa chứng chỉ cũng trong mục cài đặt đó.
# draft
trust-none = Máy chính khởi động không có địa chỉ an toàn. Khởi động với --secure 0.0.0.0:7443.
# draft
refused-not-here = Cho màn hình vào hay ra: làm ở máy chính của tiệm, ở bàn làm việc, hoặc bằng ký hiệu của người phụ trách.
# draft
refused-no-such-screen = Màn hình đó đã được cho ra rồi.
# draft
refused-nothing-to-see = Chỗ này của nhật ký không có gì cần xem lại.
# draft
refused-kept-too-long = Việc này được giữ ở đây hơn ba ngày nên không tự ghi được nữa.
    .do = Báo người phụ trách; có thể ghi bổ sung bằng tay.
# draft
kept-title = Khi không kết nối được máy chính
# draft
kept-about = Màn hình này giữ các trang sau và danh sách túi. Thao tác của bạn được giữ ở đây và gửi đi khi máy chính trở lại.
# draft
kept-nothing-else = Không giữ gì của khách ở đây.
# draft
kept-none = Không kết nối được máy chính, và trang này không được giữ ở đây. Các trang có giữ:
# draft
kept-no-act = Không kết nối được máy chính, và việc này không giữ lại được. Chưa có gì thay đổi. Làm lại khi máy chính trở lại.
# draft
kept-good = Sẵn sàng, theo danh sách cuối
# draft
kept-list = Danh sách lúc { $at }.
# draft
kept-cannot-know = Túi bị để riêng sau giờ đó thì ở đây không biết được.
# draft
kept-unknown = Mã này không có trong danh sách: đã mở rồi, mới hơn danh sách, hoặc không phải của tiệm.
# draft
kept-used = Cái này đã dùng ở đây rồi, hoặc đã quá giờ.
# draft
kept-here = Giữ ở đây: { $what }
# draft
kept-undone = Đã rút lại. Không gửi gì.
# draft
kept-read = Tôi đã đọc
# draft
kept-waits = { $what }, { $at }: chờ máy chính
# draft
kept-stranger = Màn hình này đã bị cho ra. Những gì nó giữ vẫn còn và sẽ gửi khi được cho vào lại.
# draft
kept-count = { $count ->
   *[other] Tôi giữ thao tác của bạn ở đây: { $count } đang chờ.
}
# draft
kept-wash = đã rửa
# draft
kept-pack = đã đóng túi; nhãn in khi máy chính trở lại
# draft
kept-start = đã chạy máy
# draft
kept-unload = đã lấy mẻ ra
# draft
kept-look = đã kiểm
# draft
kept-set-aside = để riêng
# draft
kept-open = mở tại ghế
# draft
kept-apart = đã tháo
# draft
kept-machine-out = ngừng dùng máy
# draft
meanwhile-title = Có người khác cũng vừa làm
# draft
meanwhile-opened-title = Mở trước khi kịp báo
# draft
meanwhile-opened = { $code }: mở lúc { $at }, { $chair }, { $who }.
# draft
meanwhile-opened-do = Đừng dùng tiếp bộ này. Để vào chỗ đồ đã dùng, lấy bộ khác, và báo người phụ trách.
# draft
meanwhile-aside = { $what }: để riêng lúc { $at }, { $who }. { $why }. Vẫn để riêng.
# draft
meanwhile-twice = { $code } đã được mở trước đó, { $at }, { $who }.
# draft
meanwhile-not-released = { $code } chưa được cho dùng.
# draft
meanwhile-released-title = Đã để riêng trong lúc đó
# draft
meanwhile-released = { $what }: cho dùng lúc { $at }, { $who }.
# draft
meanwhile-released-do = Cả hai đều có trong nhật ký. Bên an toàn hơn được giữ: đừng dùng.
# draft
meanwhile-unloaded = { $what }: lấy ra lúc { $at }.
# draft
meanwhile-both = Phần của bạn cũng đã được ghi.
# draft
meanwhile-asks = Đã xem. Người phụ trách: chạm ký hiệu của mình.
# draft
meanwhile-nobody = không ai ký
# draft
chair-some = một ghế
# draft
line-station-in = Đã cho một màn hình vào: { $what }.
# draft
line-station-out = Đã cho một màn hình ra.
# draft
line-seen = Đã đọc: mục { $seq }, nơi hai người làm khác nhau.

## The counter: hand over, correct, from paper, gaps, people
# draft
go-hand-over = BÀN GIAO
# draft
hand-over-title = Bàn giao
# draft
hand-over-give = Năm dòng cho người làm tiếp
# draft
hand-over-alone = Ở đây chỉ có một người làm
# draft
hand-over-alone-how = Không có gì để bàn giao. Thêm chữ ký thứ hai trong trang cài đặt.
# draft
hand-over-1 = 1 Đang chạy
# draft
hand-over-2 = 2 Đang chờ
# draft
hand-over-3 = 3 Để riêng
# draft
hand-over-4 = 4 Để ý
# draft
hand-over-5 = 5 Nếu máy dừng
# draft
hand-over-none = Không có
# draft
hand-over-drying = Số bộ đang khô trên giá
# draft
hand-over-dries = Đang khô trên giá: { $count }
# draft
hand-over-note = Điều cần để ý, nếu muốn
# draft
hand-over-to = Cho một người
# draft
hand-over-whoever = ai nhận cũng được
# draft
hand-over-asks = Tôi bàn giao: chạm chữ ký
# draft
take-over-asks = Tôi nhận: chạm chữ ký
# draft
go-take-over = Xem và nhận
# draft
hand-over-from = { $sign } bàn giao từ { $at }.
# draft
hand-over-for = Cho: { $sign }
# draft
hand-over-has = { $sign } đã nhận từ { $at }.
# draft
hand-over-check = Cần kiểm tra: { $run }
# draft
hand-over-runs = { $run }, số túi: { $count }, chưa đủ lần chạy để biết lúc hết giờ
# draft
hand-over-runs-until = { $run }, số túi: { $count }, thường hết giờ lúc { $at }
# draft
hand-over-jar = Hũ { $jar }: thay trước { $at }
# draft
hand-over-not-fine = { $chore }: lần trước không tốt
# draft
if-no-machine = Không có máy nào dùng được: dùng đồ sẵn sàng, rồi bộ dùng một lần.
# draft
if-only-machine = Nếu máy { $machine } dừng: để riêng mẻ đó, dùng đồ sẵn sàng, rồi bộ dùng một lần.
# draft
if-machine-stops = Nếu máy { $machine } dừng: để riêng mẻ đó, vô túi mới, dùng máy { $other }.
# draft
nobody-has-it = Chưa ai nhận phía sau
# draft
line-handed-over = Bàn giao cho { $sign }. Đang khô trên giá: { $count }.
# draft
line-taken-over = Đã nhận bàn giao.
# draft
refused-alone = Ở đây chỉ có một người làm: không có ai để bàn giao.
# draft
refused-note-long = Ghi chú nhiều nhất { $most } ký tự.
# draft
refused-taken-already = Đã có người nhận rồi.
    .do = Xem sổ ghi để biết ai nhận.
# draft
refused-not-offered = Đây không phải lần bàn giao mới nhất.
    .do = Mở lại trang BÀN GIAO.
# draft
correct-title = Sửa một dòng
# draft
correct-key = Sửa
# draft
correct-was = Đã ghi như vầy
# draft
correct-is = Đúng ra là
# draft
correct-stays = Dòng cũ vẫn còn trong sổ, bị gạch, dòng của bạn ở bên cạnh.
# draft
correct-asks = Đúng là vậy: chạm chữ ký
# draft
correct-chair = Ghế
# draft
correct-inside = Trong mẻ: bỏ dấu ở túi không có trong mẻ
# draft
correct-too = Đang chờ: đánh dấu túi cũng có trong mẻ
# draft
correct-programme = Không sửa chương trình ở đây: số liệu của máy cho biết máy đã chạy gì. Nếu không chắc, để riêng mẻ đó.
# draft
log-corrected = Đã sửa { $at }, { $sign }: { $what }
# draft
line-correction = Sửa lại: { $what }
# draft
line-run-corrected = { $run }: đã sửa đồ bên trong.
# draft
line-run-out = Không có trong mẻ: { $what }.
# draft
line-run-put = Cũng có trong mẻ: { $what }.
# draft
refused-not-correctable = Dòng này không sửa ở đây.
    .do = Nếu có đồ không được dùng, để riêng. Nếu số sai, đếm lại.
# draft
refused-nothing-corrected = Không có gì thay đổi.
    .do = Sửa chỗ sai, rồi chạm chữ ký.
# draft
refused-correct-counts = Các bộ này đã được đếm hoặc vô túi sau đó, nên không sửa dòng cũ được.
    .do = Đếm các bộ bây giờ và ghi trong trang cài đặt.
# draft
refused-correct-opened = Túi này đã có ghi thêm, nên không sửa lần mở được.
    .do = Nếu không được dùng, để riêng.
# draft
refused-correct-gone = Túi { $code } đã được cho dùng, mở hoặc để riêng: nó vẫn thuộc mẻ này, để khi thu hồi còn tìm ra.
    .do = Để riêng túi đó nếu nó không có trong mẻ.
# draft
refused-correct-failed = Mẻ này không đạt số: không lấy túi { $code } ra khỏi mẻ.
    .do = Mở ra, rửa lại, túi mới, mẻ mới.
# draft
refused-correct-harder = Đồ bạn thêm khó hấp hơn đồ mà mẻ này được xét.
    .do = Hấp lại trong một túi mới.
# draft
refused-future = Giờ đó chưa tới. Chưa ai thấy được.
    .do = Ghi đúng ngày giờ đã xảy ra, không sau bây giờ.
# draft
refused-end-before-start = Kết thúc trước khi bắt đầu.
    .do = Xem lại hai giờ. Mẻ qua nửa đêm cần ngày kết thúc riêng.
# draft
refused-later-machine-full = Máy { $machine } đang có một mẻ, nên mẻ trên giấy phải đợi.
    .do = Ghi vào khi đồ đã lấy ra.
# draft
refused-look-before-out = Lúc đó đồ còn trong máy.
    .do = Xem lại giờ trên giấy.
# draft
later-title = Ghi lại từ giấy
# draft
later-how = Theo thứ tự của tờ tuần. Ghi ngày giờ như trên giấy.
# draft
later-day = Ngày
# draft
later-time = Giờ
# draft
later-start = Bắt đầu lúc
# draft
later-end = Kết thúc lúc
# draft
later-asks = Đúng như trên giấy: chạm chữ ký
# draft
later-wash = Đã rửa
# draft
later-run = Một mẻ hấp
# draft
later-look = Số liệu và kiểm tra của một mẻ
# draft
later-open = Đã mở ở ghế
# draft
later-chore = Việc đã làm
# draft
later-closed = Ngày đó nghỉ
# draft
later-machine = Máy
# draft
later-inside = Túi trong mẻ
# draft
later-packed = Vô túi ghi trên giấy
# draft
later-packed-how = Túi chưa có trong sổ sẽ có mã bây giờ: ghi mã lên túi.
# draft
later-kind = Loại bộ đồ
# draft
later-no-look = Không có mẻ nào chờ kiểm tra.
# draft
later-look-how = Ghi như trên giấy. Trên giấy là không thì ở đây cũng là không.
# draft
later-all-turned = Đổi màu hết
# draft
later-all-dry = Khô và nguyên hết
# draft
later-inner-yes = Có, đạt điểm cuối
# draft
later-which = Túi nào không
# draft
later-code = Bốn ký tự trên túi
# draft
later-which-chore = Việc nào
# draft
later-found = Thấy
# draft
later-fine = Tốt
# draft
later-not-fine = Không tốt
# draft
log-print = Để in
# draft
gap-nothing-written = Không có gì được ghi từ { $from } tới { $to }.
# draft
gap-asks = Vì sao? Chạm một lần. Vẫn hiện cùng lý do.
# draft
gap-closed = Tiệm nghỉ
# draft
gap-holiday = Ngày lễ
# draft
gap-power = Cúp điện
# draft
gap-nothing = Không có việc
# draft
gap-paper = Ghi trên giấy
# draft
gap-forgotten = Quên ghi
# draft
line-gap = Không ghi gì từ { $from } tới { $to }: { $why }.
# draft
line-box-off = Hộp của tiệm tắt từ { $from } tới { $to }.
# draft
outage = Mất điện từ { $from } tới { $to }.
# draft
outage-do = Máy { $machine } phải báo xong; nếu không, hấp lại. Mẻ được để riêng cho tới khi có số liệu và một người ký tên bỏ lệnh.
# draft
line-counted-back = { $run }: đếm lại, { $count }.
# draft
line-no-code = Đã mở một túi không có mã: { $kind }.
# draft
line-no-code-chair = Đã mở một túi không có mã ở ghế { $chair }: { $kind }.
# draft
line-exposure = Đã ghi có dính máu.
# draft
line-exposure-chair = Đã ghi có dính máu ở ghế { $chair }.
# draft
line-speaks = { $sign } đọc { $language }.
# draft
line-person-is = { $sign }: { $what }.
# draft
line-record-shows = Sổ được ghi bằng { $language }, { $units }.
# draft
role-learns = đang học
# draft
role-charge = phụ trách máy và lệnh để riêng
# draft
role-teaches = dạy nghề
# draft
role-none = không có gì riêng
# draft
units-metric = °C, kPa, mm, g
# draft
units-us = °F, psi, in, oz
# draft
person-is = Ngôn ngữ và vai trò
# draft
person-reads = Đọc
# draft
person-reads-any = theo màn hình
# draft
person-roles = Ở đây người này
# draft
person-is-do = Lưu lại
# draft
record-title = Sổ được ghi ra sao
# draft
record-how = Cho bản in: sổ ghi, nhãn, tờ khay, tờ tuần. Mỗi màn hình giữ ngôn ngữ riêng.
# draft
record-language = Ngôn ngữ của sổ
# draft
record-units = Đơn vị
# draft
record-do = Lưu lại
# draft
shelf-aside = Để riêng { $code }: không chắc
# draft
wipe-glass = Lau màn hình
# draft
wipe-says = Lau bây giờ. Chạm không có tác dụng.
# draft
week-title = Tờ tuần
# draft
week-how = In ra và treo tường: không cần điện. Ô vuông: tới hạn ngày đó. Sau này ghi lại vào sổ.
# draft
week-water = nước + xả
# draft
week-seal = lau ron cửa
# draft
week-washed = đã rửa: số bộ, giờ, chữ ký
# draft
week-run = mẻ { $run }
# draft
week-spore = bào tử máy { $machine }: đặt, kết quả
# draft
week-jar-a = pha hũ A
# draft
week-jar-b = pha hũ B
# draft
week-bath = thay nước máy siêu âm
# draft
week-foil = thử giấy bạc (tháng)
# draft
week-retired = bỏ, gửi đi
# draft
week-odd = trễ hoặc lạ
# draft
week-back = ai lo phía sau
# draft
week-marks = Dấu: có. Chéo: không, thì KHÔNG DÙNG.

## The shelf and the sheet
# draft
shelf-not-sure = Không chắc túi nào? Chạm mã: để riêng.
# draft
week-run-first = mẻ { $run }: chu trình, từ–tới, dấu, khô, ai

## Practice
# draft
cards-title = Thẻ bài tập
# draft
cards-how = Mọi thứ ở đây đều là giả. Phát một thẻ, làm theo thẻ ở các trang khác, rồi kết thúc thẻ.
# draft
cards-clock = Đồng hồ
# draft
cards-clock-shows = Đồng hồ chỉ { $at }, tốc độ × { $times }.
# draft
cards-clock-how = Đổi tốc độ không làm giờ nhảy. Hoàn tác vẫn là 30 giây thật.
# draft
cards-times = × { $times }
# draft
cards-later = Tới nửa giờ sau
# draft
cards-everyone = tất cả
# draft
cards-dealt = Phát lúc
# draft
cards-asked = Thẻ đòi hỏi gì (cho người dạy)
# draft
cards-end = Kết thúc thẻ này
# draft
cards-deal = Phát một thẻ
# draft
cards-learner = Cho ai
# draft
cards-ended = Thẻ đã kết thúc
# draft
cards-all-of = Mọi phiếu của { $sign }
# draft
cards-score = đúng { $right } trên { $asked }
# draft
sheet-title = Phiếu trả lời
# draft
sheet-print = In phiếu
# draft
sheet-name = Họ tên:
# draft
sheet-sign = Ký hiệu:
# draft
sheet-ended = Kết thúc lúc
# draft
sheet-acts = Đã làm gì, theo thứ tự
# draft
sheet-nothing = Chưa làm gì.
# draft
sheet-steps = Thẻ đòi hỏi
# draft
sheet-open = Thẻ này còn mở. Kết thúc thẻ để xem bước nào đúng.
# draft
sheet-teacher = Người dạy, ngày:
# draft
step-right = Đúng
# draft
step-wrong = Sai
# draft
card-good-load = Một mẻ tốt
    .read = Đưa bộ đã dùng từ thùng lên kệ: rửa, đóng túi, chạy máy 1, chờ, xem, cho dùng.
# draft
card-wet = Một túi ướt
    .read = Mẻ của máy { $machine } đã lấy ra. Túi { $code } bị ướt. Các túi khác khô, nguyên và dấu đã đổi màu.
# draft
card-two-wet = Hai túi ướt
    .read = Mẻ của máy { $machine } đã lấy ra. Túi { $code } và { $other } bị ướt. Mọi dấu đã đổi màu.
# draft
card-mark = Dấu không đổi màu
    .read = Mẻ của máy { $machine } đã lấy ra. Dấu của túi { $code } không đổi màu. Tất cả đều khô và nguyên.
# draft
card-torn = Rách và rơi
    .read = Mẻ của máy { $machine } đã lấy ra. Túi { $code } bị rách, túi { $other } rơi xuống sàn. Các túi khác tốt.
# draft
card-power = Mất điện
    .read = Mất điện khi máy { $machine } đang chạy. Điện đã có lại; máy đã dừng.
# draft
card-spore = Thử bào tử không đạt
    .read = Thử bào tử của máy { $machine } đã đọc được: bào tử mọc, mẫu đối chứng cũng mọc. Hãy làm việc cần làm hôm nay.
# draft
card-wrong-pouch = Lấy nhầm túi
    .read = Khách ngồi ở ghế 3. Bạn đang cầm túi { $code }. Hãy tra mã trước khi mở.
# draft
card-fast = Chu trình nhanh
    .read = Bộ { $code } đã qua chu trình nhanh, không túi, để dùng ngay. Dấu đã đổi màu. Khách chờ ở ghế 2.
# draft
card-cannot-tell = Không rõ
    .read = Bản ghi của máy { $machine } bị thiếu. Màn hình ghi: thấp nhất { $lowest } °C, { $held } phút, { $kpa } kPa tuyệt đối. Dấu bên trong đã đạt.
# draft
card-too-many = Quá nhiều túi
    .read = Có mười bốn túi đã đóng. Hãy chạy máy 1 với số túi vừa đủ.
# draft
card-foot-bath = Bồn ngâm chân
    .read = Khách vừa rời bồn ngâm chân số 1. Hãy chuẩn bị cho khách sau.
# draft
step-washed = Rửa trước khi đóng túi
    .why = Hơi nước không qua được chất bẩn. Ghi đã rửa, rồi mới đóng túi.
# draft
step-bagged = Đóng túi trước khi chạy máy
    .why = Chỉ đồ trong túi mới giữ sạch trên kệ.
# draft
step-drying = Chương trình có sấy
    .why = Túi ra bị ướt thì không dùng. Chương trình nhanh không sấy.
# draft
step-not-early = Cửa đóng đến khi chạy xong
    .why = Mở cửa sớm là dừng mẻ. Đồ bên trong không dùng được.
# draft
step-all-looked = Đã xem mọi dấu và mọi túi
    .why = Các con số không thấy túi ướt hay rách. Chỉ có nhìn mới biết.
# draft
step-released = Mẻ tốt đã được cho dùng
    .why = Chưa có người cho dùng thì không được mở túi nào.
# draft
step-wet-said = Đã ghi đúng túi ướt, không ghi túi khác
    .why = Câu trả lời đầu tiên được giữ: khô sau vẫn là ướt.
# draft
step-others-again = Đã xem lại và cho dùng các túi khác
    .why = Một túi ướt chỉ tính túi đó. Xem lại mọi túi khác trước khi lên kệ.
# draft
step-not-used = Túi hỏng được để riêng, không dùng
    .why = Túi ướt, rách hay rơi không bao giờ dùng.
# draft
step-apart = Bộ đó rửa lại, dùng túi mới
    .why = Tháo túi ra: một túi không dùng hai lần.
# draft
step-two-wet-said = Đã ghi cả hai túi ướt
    .why = Ghi đủ ngay câu trả lời đầu. Hai túi ướt là cả mẻ.
# draft
step-none-released = Không dùng gì của mẻ này
    .why = Hai túi ướt, dấu không đổi, hay số không đạt: cả mẻ không dùng.
# draft
step-all-apart = Làm lại tất cả: rửa, túi mới, mẻ mới
    .why = Không nói lại được. Tháo mọi túi và làm lại từ đầu.
# draft
step-mark-said = Đã ghi dấu không đổi màu
    .why = Xem mọi dấu. Một dấu không đổi màu là cả mẻ không đạt.
# draft
step-torn-said = Đã ghi đúng hai túi, không ghi túi khác
    .why = Túi rách hay rơi đã hở với bụi bẩn. Ghi từng túi.
# draft
step-others-released = Các túi khác đã được cho dùng
    .why = Rách hay rơi chỉ tính túi đó. Các túi khác dùng được.
# draft
step-power-aside = Để riêng cả mẻ
    .why = Mẻ bị dừng chưa chứng tỏ gì. Để riêng tất cả.
# draft
step-spore-read = Đã đọc đúng: bào tử mọc
    .why = Một lần đọc thấy bào tử mọc là giữ, dù xem lại lần hai.
# draft
step-machine-out = Máy đã ngừng dùng
    .why = Trước hết là máy: không ai được chạy.
# draft
step-shelf-frozen = Đồ từ máy đó đã để riêng
    .why = Từ mẻ sau lần thử tốt cuối, không dùng gì từ máy này.
# draft
step-nothing-opened = Không mở túi nào của mẻ
    .why = Túi đã mở thì đã chạm khách: phải tìm lại lượt khách đó.
# draft
step-stays-out = Máy vẫn ngừng dùng
    .why = Máy chỉ dùng lại sau khi thử lại đạt.
# draft
step-another-opened = Đã mở túi khác
    .why = Túi KHÔNG DÙNG thì để yên; lấy túi tốt gần nhất.
# draft
step-code-read = Đã đọc mã của túi
    .why = Không có mã thì không ai tìm lại được lượt khách.
# draft
step-stop-stands = Lệnh dừng được giữ
    .why = Dấu hay kiểm tra không đạt không bao giờ được bỏ qua.
# draft
step-use-now = Đã xem và cho dùng ngay
    .why = Không túi thì chỉ dùng ngay, có hạn giờ, sau khi xem như mọi mẻ.
# draft
step-in-time = Đã mở trước khi hết giờ
    .why = Hết giờ thì coi như đã dùng: rửa lại.
# draft
step-read-or-again = Đọc đúng số trên màn hình, hoặc chạy lại mẻ
    .why = Ba con số, đúng như màn hình. Nghi ngờ thì chạy lại.
# draft
step-not-on-looks = Không cho dùng chỉ vì dấu và nhìn thấy tốt
    .why = Không rõ không phải là đạt. Đọc số trước, hoặc chạy lại.
# draft
step-inner-mark = Đã xem dấu bên trong mẻ
    .why = Số do người đọc thì cần thêm dấu bên trong.
# draft
step-tested-most = Không quá số đã thử
    .why = Khay đầy hơn chưa được thử: hơi có thể không tới hết. Để phần còn lại cho mẻ sau.
# draft
step-bath-wet = Đã xả, rửa, tráng và làm ướt bằng chất khử khuẩn sau khách
    .why = Sau mỗi khách. Túi lót không thay được việc này.
# draft
step-bath-time = Xả sau khi đủ thời gian ghi trên nhãn
    .why = Phải giữ ướt đủ thời gian ghi trên nhãn.
# draft
practice-title = Sổ thực hành
# draft
practice-what = Một tiệm giả để dạy, có thẻ bài tập và đồng hồ chạy nhanh. Sổ riêng: việc làm ở đó không vào sổ này.
# draft
practice-open = Sổ thực hành đang mở
# draft
practice-go = Vào sổ thực hành
# draft
practice-closed = Sổ thực hành đang đóng
# draft
practice-nobody = Chỉ người dạy mới mở được, và ở đây chưa ghi ai dạy. Ghi ai dạy ở trang Cài đặt.
# draft
practice-asks = Bạn dạy và mở sổ thực hành: chạm ký hiệu của bạn
# draft
refused-not-teacher = Sổ thực hành do người dạy mở.
# draft
refused-not-practice = Chỉ sổ thực hành mới có. Đồng hồ của tiệm thật chạy đúng giờ, và không phát thẻ ở đó.
# draft
refused-practice-times = Đồng hồ thực hành chạy nhanh 1 đến { $most } lần.
# draft
refused-practice-closed = Không mở được sổ thực hành: { $why }.
# draft
refused-card-machine = Máy mà thẻ này cần vẫn còn mẻ bên trong. Lấy mẻ ra trước, hoặc cho máy dùng lại.
# draft
refused-no-such-card = Không có thẻ nào như vậy đang mở. Có thể thẻ đã kết thúc.
# draft
line-practice-clock = Đã đặt đồng hồ thực hành: { $at }, tốc độ × { $times }.
# draft
line-card-dealt = Đã phát thẻ cho { $sign }: { $card }.
# draft
line-card-ended = Thẻ kết thúc: đúng { $right } trên { $asked }.

## Spore tests and the way on after a failed one
# draft
spores-title = Thử bào tử
# draft
spores-prove = Kết quả tốt chỉ nói về mẻ đó, không nói về mẻ khác. Không có mẫu đối chứng mọc thì kết quả không nói gì.
# draft
spores-told = Đã có kết quả
# draft
spores-placed = Đặt lúc { $at }.
# draft
spores-by = Đã gửi đi. Chờ kết quả trước { $day }.
# draft
spores-grew = Đã đổi: bào tử mọc. Dừng máy.
# draft
spores-control = Còn mẫu đối chứng?
# draft
spores-control-grew = Mẫu đối chứng đã đổi
# draft
spores-control-same = Mẫu đối chứng không đổi
# draft
spores-control-none = Không có mẫu đối chứng
# draft
spores-same-asks = Như cũ, không mọc: ký ở đây
# draft
spores-more = Gửi đi hoặc bị mất
# draft
spores-days = Mấy ngày có kết quả?
# draft
spores-post-asks = Đã gửi: ký ở đây
# draft
spores-lost = Mất, vỡ hoặc lẫn
# draft
spores-good-last = Lần thử tốt gần nhất: { $day }.
# draft
spores-good-none = Sổ chưa có lần thử tốt nào.
# draft
spores-has-control = Có mẫu đối chứng cùng lô
# draft
spores-lot = Số lô và hạn dùng trên hộp
# draft
spores-place-asks = Đã đặt mẫu thử: ký ở đây
# draft
spores-run = Mẫu đã đi qua
# draft
spores-run-none = Không phải các mẻ này
# draft
spores-says-waiting = Chưa có kết quả
# draft
spores-says-good = Bào tử không mọc, mẫu đối chứng mọc
# draft
spores-says-grew = Bào tử đã mọc
# draft
spores-says-nothing = Không nói gì: thiếu đối chứng hoặc mất
# draft
spores-test-of = Thử bào tử, { $what }
# draft
spore-path = Phải làm gì bây giờ
# draft
spore-single-use = Bộ dùng một lần: đếm ngay. Dùng cho hết ngày.
# draft
spore-lawful = Luật nơi này có cho cách khác không? Hỏi trước khi dùng.
# draft
spore-step-out = Ngừng dùng máy, treo bảng ở cửa máy.
# draft
spore-step-freeze = Giữ lại trên kệ: mọi túi từ lần thử tốt trước đều để riêng.
# draft
spore-step-repeat = Thử lại ngay, cùng chu trình, xếp đúng.
# draft
spore-wait = Đã đặt mẫu thử lại. Chờ kết quả.
# draft
spore-start = Chạy mẻ chỉ có mẫu thử
# draft
spore-start-how = Không bỏ dụng cụ của khách vào. Dùng cùng chu trình. Đọc sách máy trước.
# draft
spore-start-asks = Cửa đóng, mẫu ở trong: ký để chạy
# draft
spore-step-look = Xem lại mọi con số và dấu từ lần thử tốt trước; hỏi mọi người cách gói và xếp.
# draft
spore-step-back = Thử lại tốt và mọi thứ tốt: dùng lại máy. Thử lại xấu: sửa máy, rồi ba lần tốt liền.
# draft
spore-back = Dùng lại máy
# draft
spore-back-how = Chỉ khi mọi số và dấu từ lần thử tốt trước đều đúng. Túi bị giữ được dùng lại; túi ướt, rách, sai vẫn để riêng.
# draft
spore-back-asks = Tôi đã xem hết: ký ở đây
# draft
spore-back-at = Dùng lại từ { $at }.
# draft
spore-step-letters = Thư phải chờ: lần thử lại xấu, luật nơi này, hoặc cơ quan y tế.
# draft
spore-letters-asked = Luật nơi này tính mọi lần mọc, hoặc cơ quan y tế yêu cầu
# draft
letter-title = Thư
# draft
letter-write = Viết
# draft
letter-closed = Chưa được viết thư. Chờ lần thử lại xấu, luật nơi này, hoặc cơ quan y tế.
# draft
letter-date = { $day }
# draft
letter-what = Một lần thử định kỳ máy hấp của chúng tôi không đạt. Dụng cụ từ máy đó có thể đã dùng khi quý khách đến.
# draft
letter-visit = Lần đến của quý khách: { $at }.
# draft
letter-span = Liên quan các lần đến từ { $from } đến { $to }.
# draft
letter-nobody = Không có túi nào mở cho khách. Không cần thư.
# draft
letter-risk = Điều đã biết và chưa biết về nguy cơ (lời của cơ quan y tế):
# draft
letter-do = Cần làm gì, trước khi nào, có miễn phí không:
# draft
letter-ring = Gọi cho ai, bằng tiếng nào:
# draft
letter-changed = Chúng tôi đã thay đổi gì:
# draft
letter-sorry = Chúng tôi thành thật xin lỗi.
# draft
line-spore-placed = Đặt mẫu thử bào tử ở { $what }, có đối chứng.
# draft
line-spore-placed-alone = Đặt mẫu thử bào tử ở { $what }, không có đối chứng.
# draft
line-spore-posted = Đã gửi mẫu thử bào tử, có kết quả trước { $day }.
# draft
line-spore-grew = Đọc mẫu thử: bào tử mọc.
# draft
line-spore-good = Đọc mẫu thử: không mọc, đối chứng mọc.
# draft
line-spore-control = Đọc mẫu thử: không mọc, đối chứng cũng không mọc. Không nói gì.
# draft
line-spore-alone = Đọc mẫu thử: không mọc, không có đối chứng. Không nói gì.
# draft
line-spore-lost = Mẫu thử bào tử mất, vỡ hoặc lẫn.
# draft
line-unfrozen = Hết giữ lại: { $what } được dùng lại.
# draft
line-serviced = { $machine } đã bảo trì.
# draft
line-repaired = { $machine } đã sửa.
# draft
line-validated = { $machine } đã kiểm định.
# draft
line-moved = { $machine } đã dời chỗ.
# draft
refused-no-such-test = Mẫu thử đó không có trong sổ.
# draft
refused-test-not-failed = Mẫu thử đó bào tử không mọc.
# draft
refused-repeat-not-good = Lần thử lại chưa tốt. Máy vẫn ngừng dùng.
    .do = Thử lại, chờ kết quả và đọc cùng mẫu đối chứng.
# draft
refused-which-control = Chưa nói mẫu đối chứng ra sao. Chưa ghi gì.
    .do = Quay lại và cho biết mẫu đối chứng có đổi không.
# draft
refused-answer-days = Chờ kết quả từ 1 đến { $most } ngày.
# draft
spores-size = Nếu hôm nay bào tử mọc, phải tìm { $count } lần khách đến.
# draft
spores-late = { $count } kết quả bị trễ. Hỏi phòng xét nghiệm.
# draft
spore-usable = { $count } bộ sẵn sàng được dùng
# draft
spore-frozen = { $count } túi bị giữ lại
# draft
spore-visits = { $count } lần khách đến có liên quan
# draft
spore-stays = Thử lại không đạt. Ngừng máy đến khi sửa xong; còn thiếu { $count } lần tốt liền.
# draft
letter-count = { $count } lần khách đến. Mỗi lần một thư, gửi cùng lúc.
# draft
first-machines = { $count } máy

## The first minute
# draft
first-machine = Ở đây có mấy máy?
# draft
first-title = Phút đầu tiên
# draft
first-running = Máy 1 đang chạy?
# draft
first-sign = Chọn một dấu ký. Từ nay là của bạn; chữ tắt để sau.
# draft
first-asks = Cửa đóng, máy chạy: chạm dấu ký, đồng hồ chạy
# draft
first-asks-sign = Chỉ lấy dấu ký
# draft
first-not-running = Chưa có máy nào chạy
# draft
first-signs = lá, sao, cá, trăng, sóng, cây, chim, khóa
# draft
refused-not-empty = Sổ này không còn trống. Chưa ghi gì.
    .do = Về trang BÂY GIỜ; thêm máy và dấu ký ở Cài đặt.

## Hot after the run
# draft
hot-until = NÓNG đến { $at }
# draft
hot-then = Sau đó xem từng túi rồi cho phép dùng.
# draft
hot-cool = Đã nguội, cầm được? Xem ngay

## Shapes and words
# draft
legend-title = Hình và chữ
# draft
legend-how = Mỗi trạng thái có hình riêng và chữ riêng. Màu chỉ lặp lại.
# draft
legend-states = Bộ đồ đang ở đâu
# draft
legend-records = Số liệu của mẻ nói gì
# draft
legend-fine = Mọi thứ ổn
# draft
legend-fine-how = Thẻ sáng, viền mảnh: không cần làm gì, chỉ để biết.
# draft
legend-turn = Đến lượt bạn
# draft
legend-turn-how = Thẻ sáng có vạch dày: đang chờ người làm.
# draft
legend-stop = Dừng
# draft
legend-stop-how = Thẻ sẫm có viền trong: không đụng vào, dù trông thế nào.

## Counting back
# draft
look-count = Bạn đếm được mấy túi?
# draft
refused-count-first = Hãy đếm túi của mẻ này trước. Chưa cho phép dùng gì.
    .do = Quay lại, gõ số túi đếm được rồi ký.
# draft
refused-count-again = Số đó không khớp. Chưa cho phép dùng gì.
    .do = Đếm lại, ngay tại máy.

## Counted on paper
# draft
later-counted = Số túi đã đếm, nếu giấy có ghi

## Upkeep
# draft
place-upkeep = VIỆC CẦN LÀM
# draft
upkeep-title = Việc cần làm
# draft
upkeep-all = Tất cả việc cần làm
# draft
upkeep-set-title = Việc cần làm: cài đặt
# draft
caution-liquids = Không trộn hai loại thuốc. Mở cửa sổ. Nhãn thuốc là trên hết.
# draft
about-salon = Cả tiệm
# draft
thing-jar = Hũ ngâm { $number }
# draft
thing-basin = Bồn chân { $number }
# draft
thing-bath = Máy rửa siêu âm { $number }
# draft
thing-gone = (không có)
# draft
chore-of = { $about }: { $chore }
# draft
chores-now = Việc đến hạn
# draft
chores-soon = Việc đến hạn: { $count }
# draft
chores-more = và { $count } việc nữa
# draft
chores-none = Giờ chưa có việc nào đến hạn.
# draft
chores-later = Cuối ngày hôm nay
# draft
chores-counted = Tính theo mẻ, hoặc chưa biết
# draft
chores-quiet = Đã làm hôm nay, và việc sắp tới
# draft
chores-today = Hôm nay
# draft
chores-next = Sắp tới
# draft
chores-watch = Không ổn: cần người xem lại
# draft
chore-asks = Xong chưa? Chạm dấu ký của bạn.
# draft
chore-not-fine = Thấy không ổn
# draft
chore-found = Thấy không ổn: { $done }
# draft
chore-closed = Hôm nay tiệm đóng cửa
# draft
chore-not-used = Hôm nay không dùng
# draft
chore-stops = Không chạy máy đến khi làm xong và thấy ổn. Không ai được bỏ qua.
# draft
due-now = Đến hạn bây giờ
# draft
due-late = Trễ từ { $day }
# draft
due-later = Hạn hôm nay lúc { $time }
# draft
due-done = Đã làm { $done }
# draft
due-done-today = hôm nay đã làm
# draft
due-left = Hôm nay bỏ qua
# draft
due-next = Lần tới: chậm nhất { $day }
# draft
due-runs = { $runs } trên { $most } mẻ
# draft
due-runs-over = Trễ. Số mẻ quá hạn: { $count }
# draft
due-not-known = Chưa biết bao lâu một lần: xem sách máy
# draft
often-day = mỗi ngày
# draft
often-days = { $count } ngày một lần
# draft
often-runs = sau { $count } mẻ
# draft
source-own = Bao lâu một lần: do tiệm đặt.
# draft
source-page = Bao lâu một lần: sách máy, trang { $page }.
# draft
source-common = Bao lâu một lần: thói quen chung, không có nguồn.
# draft
source-dental = Bao lâu một lần: hướng dẫn nha khoa, CDC 2003. Nơi bạn có thể khác.
# draft
source-foil = Bao lâu một lần: báo ngành nha khoa.
# draft
source-nsw = Bao lâu một lần: New South Wales, 2022. Nơi bạn có thể khác.
# draft
source-manual = Chỉ sách máy mới biết.
# draft
how-water = Chỉ dùng nước cất. Xem mực nước và chỗ xả.
# draft
how-seal = Lau bằng khăn ẩm, không thuốc tẩy. Có vết rách không?
# draft
how-chamber = Lòng máy, khay và giá. Không dùng miếng chà nhám.
# draft
how-tank = Xả, súc, đổ nước cất.
# draft
how-bin = Đổ và rửa thùng. Mang bao tay.
# draft
how-last-load = Không để gì trong máy qua đêm: ướt và rỉ sét.
# draft
how-bath = Thuốc mới, không quá 45 °C (113 °F). Để thoát khí.
# draft
how-foil = Giấy nhôm đứng, 30 giây. Mảng trống quá 1,3 cm (1/2 in): không ổn.
# draft
how-stock = Đếm đồ hao. Xem hạn dùng.
# draft
basins-title = Bồn chân
# draft
basin-waits = Khách chân đã xong, bồn chưa rửa: { $count }
# draft
basin-how = Xả. Rửa bằng xà phòng. Súc. Đổ nước, khử trùng, mở bơm. Rồi ký: bắt đầu tính giờ ướt.
# draft
basin-liner = Túi lót không thay cho việc rửa.
# draft
basin-wet-until = giữ ướt đến { $time }
# draft
basin-not-yet = Đừng xả trước giờ đó.
# draft
basin-drain-now = xả ngay, đủ giờ từ { $time }
# draft
basin-clean-since = Đã xả và khô: { $time }
# draft
basin-again = Bắt đầu lại giờ ướt
# draft
basin-after = Sau việc gì?
# draft
basin-after-client = một khách
# draft
basin-after-day = cuối ngày
# draft
basin-after-week = rửa hằng tuần
# draft
basin-wet-asks = Sạch và đầy chưa? Chạm dấu ký: bắt đầu { $count } phút.
# draft
basin-drain-asks = Đã xả và khô chưa? Chạm dấu ký của bạn.
# draft
basin-day-end = rửa cuối ngày
# draft
basin-week = rửa hằng tuần
# draft
basin-not-used-today = hôm nay không dùng
# draft
basin-label-own = Giữ ướt { $count } phút, theo nhãn của bạn.
# draft
basin-label-typical = Giữ ướt { $count } phút: thường gặp (EPA). Nhãn của bạn là trên hết.
# draft
jars-title = Hũ ngâm
# draft
jar-under = Ngâm ngập đến { $time }
# draft
jar-out = Ngâm đủ từ { $time }. Lấy ra, súc, lau khô.
# draft
jar-empty = Trống. Pha mới.
# draft
jar-not-known = Thuốc dùng được bao lâu: chưa biết. Đọc nhãn.
# draft
jar-good = Thuốc dùng được đến { $time }
# draft
jar-past = Quá hạn từ { $time }. Đổ, súc, pha mới.
# draft
jar-contact = Ngập hoàn toàn { $count } phút, theo nhãn.
# draft
jar-contact-not-known = Số phút ngâm: chưa biết. Đọc nhãn.
# draft
jar-again = Mỗi món bỏ thêm tính giờ lại từ đầu.
# draft
jar-change = Thay thuốc
# draft
jar-cloudy = Thuốc đục? Thay ngay.
# draft
jar-in-asks = Vừa bỏ đồ vào? Chạm dấu ký của bạn.
# draft
jar-mixed-asks = Đã đổ, súc, pha mới? Chạm dấu ký của bạn.
# draft
jar-emptied-asks = Đã đổ và súc? Chạm dấu ký của bạn.
# draft
jar-lasts-day = đến cuối ngày
# draft
jar-lasts-hours = { $count } giờ
# draft
stock-title = Mua đồ
# draft
stock-enough = Giờ chưa cần mua gì.
# draft
stock-rest = Còn đủ: { $count }
# draft
stock-left = Còn khoảng { $count }, đếm ngày { $day }.
# draft
stock-left-counted = { $count } lúc đếm, ngày { $day }.
# draft
stock-not-counted = Chưa đếm.
# draft
stock-buy = Mua: dưới { $count }.
# draft
stock-bought = Đã mua
# draft
stock-counted = Đã đếm
# draft
spore-title = Thử bào tử
# draft
spore-line = { $about }: lần tốt gần nhất { $good }. { $due }
# draft
spore-never = chưa có
# draft
spore-go = Đến phần thử bào tử
# draft
set-things = Hũ ngâm, bồn chân, máy siêu âm
# draft
add-jar = Thêm hũ ngâm
# draft
add-basin = Thêm bồn chân
# draft
add-bath = Thêm máy siêu âm
# draft
set-keep = Lưu lại
# draft
set-wet = Số phút giữ ướt, theo nhãn
# draft
set-contact = Số phút ngập, theo nhãn
# draft
set-lasts = Thuốc dùng được mấy giờ (trống: đến cuối ngày)
# draft
set-label = Tên, số, độ pha, như trên nhãn
# draft
set-thing-ended = Không còn ở đây
# draft
set-chores = Bao lâu một lần
# draft
set-chores-how = Theo ngày, theo mẻ, hoặc cả hai: cái nào đến trước. Chưa biết thì để trống.
# draft
set-chore-own = Việc riêng của tiệm
# draft
set-chore-word = Việc gì, chữ thường
# draft
set-about = Cho cái gì
# draft
set-days = Chậm nhất sau mấy ngày
# draft
set-runs = Chậm nhất sau mấy mẻ
# draft
set-part = Lúc nào trong ngày
# draft
part-opening = trước khách đầu
# draft
part-closing = sau khách cuối
# draft
part-any = lúc nào cũng được
# draft
set-page = Trang trong sách máy
# draft
set-stops = Trễ thì không chạy máy
# draft
set-chore-ended = Tiệm không làm việc này
# draft
set-stock-add = Theo dõi thêm một món
# draft
set-stock-word = Món gì, chữ thường
# draft
set-used-by = Cái gì làm hao
# draft
used-by-counting = chỉ đếm mới biết
# draft
used-by-pouch = mỗi túi một cái
# draft
used-by-run = mỗi mẻ một cái
# draft
used-by-test = mỗi lần thử bào tử một cái
# draft
set-least = Mua khi còn dưới
# draft
set-stock-ended = Không theo dõi nữa
# draft
wall-drain = Xả bồn chân { $number } ngay
# draft
wall-jar = Thay hũ ngâm { $number } ngay
# draft
wall-upkeep = VIỆC CẦN LÀM { $count }
# draft
line-thing = Có { $what }.
# draft
line-thing-ended = { $what } không còn ở đây.
# draft
line-jar-set = { $what }: ngâm { $count } phút, thuốc dùng { $lasts }.
# draft
line-jar-mixed = { $what }: đã đổ, súc, pha mới.
# draft
line-jar-in = { $what }: vừa bỏ đồ vào.
# draft
line-jar-emptied = { $what }: đã đổ và súc.
# draft
line-basin-set = { $what }: giữ ướt { $count } phút, theo nhãn.
# draft
line-basin-wet = { $what }: đã rửa và giữ ướt. Sau: { $after }.
# draft
line-basin-drained = { $what }: đã xả và khô.
# draft
line-not-used = { $what }: hôm nay không dùng.
# draft
line-chore-set = { $chore }: { $often }.
# draft
line-chore-ended = Tiệm không làm: { $chore }.
# draft
line-chore-done = Đã làm: { $chore }.
# draft
line-chore-not-fine = Đã làm, thấy không ổn: { $chore }.
# draft
line-chore-closed = Bỏ qua, tiệm đóng cửa: { $chore }.
# draft
line-chore-not-used = Bỏ qua, không dùng: { $chore }.
# draft
line-stock-set = { $what }: mua khi còn dưới { $count }.
# draft
line-stock-ended = Không theo dõi nữa: { $what }.
# draft
line-stock-counted = Đã đếm: { $count } { $what }.
# draft
line-stock-bought = Đã mua: { $count } { $what }.
# draft
chore-word-water-level = mực nước
# draft
chore-word-door-seal = ron cửa
# draft
chore-word-chamber = lòng máy và khay
# draft
chore-word-tank = súc bình nước
# draft
chore-word-spore-test = thử bào tử
# draft
chore-word-bacteria-filter = màng lọc khí
# draft
chore-word-dust-filter = màng lọc bụi
# draft
chore-word-door-seal-change = thay ron cửa
# draft
chore-word-validation = kiểm định máy
# draft
chore-word-used-bin = thùng đồ dơ
# draft
chore-word-last-load = lấy mẻ cuối ra
# draft
chore-word-stock-count = đếm đồ
# draft
chore-word-sharpness = sắc hay lụt
# draft
chore-word-eyewash = rửa mắt và sơ cứu
# draft
chore-word-bath-fresh = pha thuốc mới
# draft
chore-word-bath-drained = xả và lau
# draft
chore-word-foil-test = thử giấy nhôm
# draft
stock-word-pouches = túi hấp
# draft
stock-word-marks = dấu đổi màu
# draft
stock-word-spore-tests = thử bào tử
# draft
stock-word-distilled-water = nước cất
# draft
stock-word-oil = dầu
# draft
stock-word-brushes = bàn chải
# draft
stock-word-gloves = bao tay
# draft
stock-word-detergent = xà phòng rửa
# draft
stock-word-disinfectant = thuốc khử trùng
# draft
refused-no-such-thing = Hũ, bồn hay máy đó không có trong sổ.
# draft
refused-jar-empty = Hũ ngâm { $number } đang trống.
    .do = Pha mới trước, rồi ký.
# draft
refused-jar-past = Thuốc trong hũ ngâm { $number } đã quá hạn.
    .safe = Chưa ghi gì. Đồ trong hũ chưa được khử trùng.
    .do = Đổ, súc, pha mới. Rồi mới bỏ đồ vào.
# draft
refused-basin-wet = Bồn chân { $number } phải giữ ướt đến { $until }.
    .safe = Chưa ghi gì. Chưa đủ số phút trên nhãn.
    .do = Chờ đến giờ đó. Lỡ xả rồi? Đổ đầy và bắt đầu lại giờ ướt.
# draft
refused-basin-dry = Bồn chân { $number } không đang ướt: không có gì để xả.
# draft
refused-basin-used = Bồn chân { $number } đã rửa hôm nay, nên đã dùng.
    .do = Cuối ngày cũng rửa bồn này.
# draft
refused-no-such-chore = Tiệm không có việc đó.
# draft
refused-chore-due = Chưa được chạy máy: { $chore } đã trễ.
    .safe = Chưa chạy gì. Các túi vẫn đã đóng gói.
    .do = Làm việc đó, thấy ổn, ký ở VIỆC CẦN LÀM. Hoặc dùng máy khác.
# draft
refused-chore-stops = { $chore } làm dừng việc, nên không được bỏ qua.
# draft
refused-chore-stopped = { $chore } đang làm dừng việc: hãy làm trước.
    .do = Con số sai? Nhập lại cùng số trang trong sách máy.
# draft
refused-stops-machine = Chỉ việc của máy hấp mới làm dừng việc.
# draft
refused-stops-how-often = Việc làm dừng máy cần số ngày hoặc số mẻ.
# draft
refused-spore-placed = Thử bào tử phải đặt vào máy, không chỉ ký.
    .do = Vào phần thử bào tử và đặt một cái.
# draft
refused-no-such-stock = Tiệm không theo dõi món đó.


## The record, shown
# draft
show-title = Cho xem sổ ghi
# draft
show-how = Một trang chỉ để đọc, cho người yêu cầu xem sổ ghi. Không thể sửa gì trên đó và nó không dẫn đi đâu khác. Trang không có tên khách.
# draft
show-back = Nút Quay lại của trình duyệt đưa từ trang đó về đây.
# draft
show-do = Cho xem ngay
# draft
show-open = Đang mở để đọc
# draft
show-address = Đến { $at }:
# draft
show-close = Đóng tất cả ngay
# draft
folder-title = Sổ ghi của tiệm này
# draft
folder-until = Chỉ đọc đến { $at }
# draft
folder-over-title = Trang này đã đóng
# draft
folder-over = Đã hết giờ, hoặc chưa ai mở trang này. Trang chỉ để đọc và không có gì bị thay đổi. Hãy nhờ người làm ở đây cho xem sổ ghi lại.
# draft
folder-languages = Ngôn ngữ của trang này
# draft
folder-span = Từ { $from } đến { $to }
# draft
folder-printed = In theo sổ lúc { $at }
# draft
folder-page = Trang
# draft
folder-of = /
# draft
folder-book-salon = Sổ của chính tiệm
# draft
folder-period = Chọn thời gian
# draft
folder-days-30 = 30 ngày qua
# draft
folder-days-90 = 90 ngày qua
# draft
folder-year = Năm nay
# draft
folder-from = Từ ngày
# draft
folder-to = Đến ngày
# draft
folder-choose = Xem thời gian này
# draft
folder-unread = Không đọc được các ngày này. Đang hiện 30 ngày qua.
# draft
folder-parts = Các phần của trang này
# draft
folder-none = Sổ này chưa giữ gì về việc này. Hãy hỏi xem giấy tờ.
# draft
folder-none-span = Không có gì được ghi về việc này trong thời gian đang xem.
# draft
folder-part-0 = Tiệm này hôm nay
# draft
folder-part-1 = Ai làm ở đây và ai được chạy máy
# draft
folder-part-2 = Quy định được theo và các thiết lập
# draft
folder-part-3 = Các mẻ
# draft
folder-part-4 = Thử bào tử
# draft
folder-part-5 = Để riêng và kết quả sau đó; thu hồi
# draft
folder-part-6 = Dung dịch khử trùng
# draft
folder-part-7 = Bể siêu âm
# draft
folder-part-8 = Các máy
# draft
folder-part-9 = Bồn ngâm chân
# draft
folder-part-10 = Đào tạo và an toàn cho người
# draft
folder-part-11 = Khoảng trống và lý do
# draft
folder-part-12 = Phiếu an toàn, rác thải, đồ dùng một lần
# draft
folder-part-13 = Cách đọc trang này
# draft
folder-machine-in = đang dùng
# draft
folder-machine-out = NGỪNG DÙNG từ { $at }
# draft
folder-aside-none = Hiện không có gì bị để riêng.
# draft
folder-sign = Chữ ký
# draft
folder-is = Điều đã nói về người này
# draft
folder-in-charge = phụ trách các máy
# draft
folder-learns = đang học: có người khác cùng coi
# draft
folder-teaches = dạy nghề
# draft
folder-no-role = chưa nói gì
# draft
folder-who = Ở đây chỉ có chữ ký mà mỗi người tự chọn. Muốn xem tên và giấy phép, hãy hỏi bản treo trên tường.
# draft
folder-who-runs = Trong sổ chưa ghi ai phụ trách các máy. Hãy hỏi.
# draft
folder-rule = Sổ này không giữ tên, điều khoản của quy định và ngày đã đọc. Hãy hỏi xem giấy tờ.
# draft
folder-retention = Giữ sổ bao lâu: chưa đặt. Không thể sửa hay xóa mục nào mà không bị thấy.
# draft
folder-interval = Thời gian giữa hai lần thử bào tử: chưa đặt.
# draft
folder-interval-days = Thời gian giữa hai lần thử bào tử, { $machine }: nhiều nhất { $days } ngày.
# draft
folder-limits = Các giới hạn để xét một mẻ
# draft
folder-limits-own = Lấy giới hạn chặt hơn giữa các giới hạn này và thiết lập của máy. Nội dung và nguồn được giữ nguyên bằng tiếng Anh.
# draft
folder-col-what = Nội dung
# draft
folder-col-value = Giá trị
# draft
folder-col-source = Nguồn
# draft
folder-col-how = Biết bằng cách nào
# draft
folder-limit-seen = đã đọc trong nguồn đó
# draft
folder-limit-memory = theo trí nhớ, cần kiểm lại
# draft
folder-limit-ours = quy tắc của chương trình này
# draft
folder-col-day = Ngày
# draft
folder-col-run = Mẻ
# draft
folder-col-end = Lấy ra
# draft
folder-col-programme = Chu trình
# draft
folder-col-inside = Bên trong
# draft
folder-col-steam = Hơi nước
# draft
folder-col-known = Biết nhờ
# draft
folder-col-looks = Dấu; khô và lành
# draft
folder-col-signs = Chữ ký
# draft
folder-col-notes = Ghi chú
# draft
folder-col-by = Bởi
# draft
folder-col-why = Lý do
# draft
folder-col-became = Sau đó ra sao
# draft
folder-col-in = Ở
# draft
folder-col-result = Kết quả
# draft
folder-col-done = Đã làm gì
# draft
folder-col-chore = Việc
# draft
folder-col-found = Thấy
# draft
folder-col-after = Sau khi
# draft
folder-col-drained = Xả nước
# draft
folder-col-last = Lần cuối làm ở đây
# draft
folder-not-out = chưa lấy ra
# draft
folder-marks-all = mọi dấu đã đổi màu
# draft
folder-marks-none = chưa coi dấu
# draft
folder-dry-all = tất cả khô và lành
# draft
folder-dry-none = chưa coi độ khô
# draft
folder-dry-bad = { $wet } ướt, { $torn } rách, { $dropped } rớt
# draft
folder-inner-bad = chỉ thị bên trong chưa đạt điểm cuối
# draft
folder-not-looked = chưa ai coi
# draft
folder-signed-start = bắt đầu { $sign }
# draft
folder-signed-look = coi { $sign }
# draft
folder-signed-release = cho dùng { $sign }
# draft
folder-no-sign = không có chữ ký
# draft
folder-corrected = đã sửa
# draft
folder-differ = hai mục khác nhau
# draft
folder-aside-why = KHÔNG DÙNG. { $why }
# draft
folder-lot-none = không giữ số lô
# draft
folder-jar-contact = { $label }: ngâm ngập { $minutes } phút.
# draft
folder-jar-hours = Mỗi lần pha dùng { $hours } giờ.
# draft
folder-jar-day = Mỗi lần pha dùng đến cuối ngày.
# draft
folder-jar-no-label = không giữ nhãn
# draft
folder-jar-unset = Chưa ghi nhãn yêu cầu gì.
# draft
folder-mixed = pha mới
# draft
folder-emptied = đổ và tráng
# draft
folder-fine = đúng như cần
# draft
folder-not-fine = KHÔNG đúng như cần
# draft
folder-left-closed = bỏ qua: tiệm đóng cửa
# draft
folder-left-unused = bỏ qua: không dùng
# draft
folder-machine-paper = Sổ này không giữ kiểu máy, số máy, sách hướng dẫn và giấy chứng nhận. Hãy hỏi xem giấy tờ.
# draft
folder-services-none = Chưa ghi lần bảo trì nào.
# draft
folder-due-runs = { $chore }: chậm nhất sau { $runs } mẻ, đã chạy { $since } từ lần cuối.
# draft
folder-after-client = một khách
# draft
folder-after-day = cuối ngày
# draft
folder-after-week = một tuần
# draft
folder-not-used = hôm đó không dùng
# draft
folder-not-drained = không ghi
# draft
folder-training = Sổ này không giữ việc đào tạo, ôn lại hằng năm và đề nghị tiêm chủng. Hãy hỏi xem giấy tờ.
# draft
folder-exposure = Đã ghi có tiếp xúc với máu. Việc xử lý được giữ riêng vì sự riêng tư của người đó.
# draft
folder-gap-closed = tiệm đóng cửa
# draft
folder-gap-holiday = ngày lễ
# draft
folder-gap-power = mất điện
# draft
folder-gap-nothing = mở cửa, không có việc ở đây
# draft
folder-gap-paper = ghi trên giấy
# draft
folder-gap-forgotten = quên
# draft
folder-gap-box = máy tính của tiệm bị tắt
# draft
folder-gap-none = Không có khoảng trống nào được giải thích trong thời gian đang xem. Điều đó không có nghĩa là không có: hãy tìm những ngày không có dòng nào ở phần 3.
# draft
folder-sheets = Sổ này không giữ phiếu an toàn hóa chất, cách bỏ rác và đồ chỉ dùng một lần. Hãy hỏi xem phiếu, thùng rác và kho đồ dùng một lần.
# draft
folder-read-measured = Đo: lấy từ tệp do chính máy ghi. Tệp được giữ nguyên như khi nhận.
# draft
folder-read-read = Đọc trên màn hình: một người gõ ba con số từ máy.
# draft
folder-read-clock = Theo đồng hồ: chỉ biết lúc bắt đầu và kết thúc, không biết gì về hơi nước.
# draft
folder-read-paper = Từ giấy: chép lại từ tờ ghi tay.
# draft
folder-read-later = Ghi sau: việc xảy ra và lúc ghi cách nhau hơn năm phút. Cả hai giờ đều được giữ.
# draft
folder-read-corrected = Đã sửa hoặc gạch ngang: mục đầu vẫn còn, mục sau nằm bên cạnh.
# draft
folder-read-steam = Hơi nước đã làm việc nghĩa là dữ liệu cho thấy điều đó với đồ được ghi là ở bên trong. Nó không nói túi đã khô: chỉ nhìn mới biết.
# draft
folder-read-chain = Mỗi dòng gắn với dòng trước. Có thể kiểm tra tại máy tính của tiệm xem toàn bộ nhật ký có còn như lúc ghi không.
# draft
folder-show-title = Hãy bảo chúng tôi làm cho xem
# draft
folder-show-how = Ai làm ở đây cũng có thể làm sáu bước này cho xem.
# draft
folder-show-1 = Cho bộ đồ sạch, khô vào túi và dán nhãn
# draft
folder-show-2 = Xếp khay, chọn chu trình, bắt đầu
# draft
folder-show-3 = Xem số, dấu và túi, và nói phải làm gì nếu có cái không đúng
# draft
folder-show-4 = Kiểm tra túi tại ghế trước khi mở
# draft
folder-show-5 = Pha dung dịch khử trùng và ghi ngày lên hũ
# draft
folder-show-6 = Rửa bồn ngâm chân và giữ ướt đủ thời gian trên nhãn
# draft
folder-show-never = không có trong sổ
# draft
folder-col-lot = Số lô và hạn dùng
# draft
show-minutes = Trang tự đóng sau { $count } phút.
# draft
folder-aside-now = Hiện có { $count } túi không được dùng.
# draft
folder-runs-count = { $count } mẻ trong thời gian đang xem.
# draft
folder-marks-bad = { $count } dấu chưa đổi màu
# draft
folder-became-still = { $count } vẫn để riêng
# draft
folder-became-apart = { $count } đã tháo ra để rửa lại
# draft
folder-became-back = { $count } được dùng lại, do một người ký
# draft
folder-became-opened = { $count } đã được mở từ trước
# draft
folder-exposures = Tiếp xúc với máu: đã ghi { $count } lần trong thời gian đang xem.

## What a fresh eye found
# draft
refused-test-open = Máy này có lần thử bào tử không đạt. Vẫn ngừng dùng.
    .do = Vào Thử bào tử: thử lại cho đến khi đạt.
# draft
refused-packed-later = Túi { $code } được gói sau khi mẻ đó bắt đầu. Nó không ở trong mẻ.
    .do = Cho vào một mẻ mới.
# draft
refused-before-that-run = Lúc đó mẻ trước còn trong máy. Chưa ghi gì.
# draft
refused-later-overlaps = Máy { $machine } có mẻ khác vào lúc đó. Chưa ghi gì.
    .do = Xem lại giờ trên giấy.

## In charge
# draft
refused-in-charge = Chỉ người phụ trách ký được việc này. Chưa ghi gì.
    .do = Hỏi người phụ trách. Để riêng thì ai cũng làm được.

## A run of which nothing is known
# draft
run-nothing-said = Chưa ai nói trong mẻ này có gì, nên trên kệ ở đây không có túi nào của mẻ. Mẻ sau hãy gói ở đây trước.
