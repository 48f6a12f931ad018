### Korean: the lines that matter most at the sink, the machine and the chair. Written from memory; every
### line is a draft until somebody of the trade who grew up with the language has read it.

## Frame
# draft
place-now = 지금
# draft
place-ready = 준비됨
# draft
place-machine = 기계
# draft
place-log = 기록
# draft
language = 언어
# draft
book-demo = 데모: 꾸며낸 내용
# draft
book-practice = 연습
# draft
did = 적었음: { $what }
# draft
undo = 되돌리기
# draft
undo-release = 되돌리기: 따로 두기
# draft
foot-manual = 기계 설명서와 지역 규정이 먼저입니다.
# draft
foot-person = 이 도구는 배운 사람의 판단을 돕습니다. 의료 기기가 아닙니다.
# draft
back = 뒤로
# draft
not-known = 모름

## Dates
# draft
date-day = { $month } { $day }일 { $weekday }
# draft
date-short = { $month } { $day }일
# draft
weekday-1 = (월)
# draft
weekday-2 = (화)
# draft
weekday-3 = (수)
# draft
weekday-4 = (목)
# draft
weekday-5 = (금)
# draft
weekday-6 = (토)
# draft
weekday-7 = (일)
# draft
month-1 = 1월
# draft
month-2 = 2월
# draft
month-3 = 3월
# draft
month-4 = 4월
# draft
month-5 = 5월
# draft
month-6 = 6월
# draft
month-7 = 7월
# draft
month-8 = 8월
# draft
month-9 = 9월
# draft
month-10 = 10월
# draft
month-11 = 11월
# draft
month-12 = 12월

## Names
# draft
machine-name = 기계 { $machine }
# draft
run-name = 기계 { $machine }, { $run }번째 운전
# draft
chair-name = { $chair }번 의자
# draft
pouch-count = 파우치 { $count }개

## States
# draft
state-used = 사용함
# draft
state-soaking = 담금 중
# draft
state-washed = 씻음
# draft
state-disinfected = 소독함
# draft
state-bagged = 포장함
# draft
state-in-machine = 기계 안
# draft
state-to-check = 확인할 것
# draft
state-ready = 사용 가능
# draft
state-use-now = 지금 사용
# draft
state-opened = 개봉함
# draft
state-set-aside = 따로 둠
# draft
state-retired = 폐기
# draft
state-missing = 없어짐
# draft
outcome-did = 증기가 제대로 작용했음
# draft
outcome-did-not = 증기가 제대로 작용하지 않았음
# draft
outcome-cannot-tell = 알 수 없음
# draft
outcome-none = 아직 수치 없음

## Do not use
# draft
do-not-use = 사용 금지
# draft
stop-mark = 표시 색이 변하지 않음
# draft
stop-wet = 젖음
# draft
stop-torn = 찢어짐
# draft
stop-dropped = 떨어뜨림
# draft
stop-do-aside = '사용 금지' 칸에 두세요. 다른 파우치를 쓰세요.
# draft
stop-another = 다른 파우치가 있음

## What may hurt
# draft
caution-hot = 뜨거움. 집게나 내열 장갑. 식힐 것. 압력이 있을 때 절대 열지 말 것.
# draft
caution-sharp = 끝이 날카로움. 관절은 벌리고, 끝은 몸 반대쪽으로.
# draft
caution-gloves = 더러운 도구와 강한 액체에는 두꺼운 장갑과 눈 보호.
# draft
caution-manual = 기계 설명서와 지역 규정이 먼저입니다.

## NOW
# draft
now-title = 지금
# draft
now-quiet = 지금 할 일이 없습니다.
# draft
check-pouches = 파우치 { $count }개 확인
# draft
washed-waiting = 씻은 세트 { $count }개, 파우치를 기다림
# draft
bagged-waiting = 파우치 { $count }개, 기계를 기다림
# draft
go-check = 확인하기
# draft
go-pack = 포장하기
# draft
go-start = 운전 시작
# draft
go-chair = 의자에서 열기

## Wash, pack, start
# draft
wash-title = 씻기와 포장
# draft
wash-look = 씻고, 말리고, 살펴보고, 기름칠? 녹, 무딘 것, 헐거운 것: 빼세요.
# draft
wash-asks = 씻었고 손도 깨끗함: 내 표시를 누르세요
# draft
pack-cautions = 관절은 벌리고, 서로 닿지 않게. 4분의 3까지만.
# draft
pack-asks = 포장함: 내 표시를 누르세요
# draft
start-title = 운전 시작
# draft
start-asks = 시작: 내 표시를 누르세요
# draft
strip-ends = 보통 { $at }쯤 끝남
# draft
strip-by-clock = 시계로만 앎: 기계 안은 볼 수 없음.
# draft
unload-asks = 기계에서 꺼내 선반에 둠: 내 표시를 누르세요

## Look and release
# draft
look-marks = 모든 표시의 색이 변했나요?
# draft
look-dry = 모두 마르고 온전한가요?
# draft
one-not = 하나가 아님
# draft
looks-asks = 모든 파우치를 봤음. 모두 좋음, 내보내기: 내 표시를 누르세요
# draft
set-aside-run = 이번 운전 전체를 따로 두기

## Chair
# draft
chair-title = 의자에서 열기
# draft
chair-look = 보세요: 말랐나요? 온전한가요? 표시 색이 변했나요?
# draft
code-label = 파우치의 네 글자
# draft
code-look = 찾기
# draft
ready-title = 준비됨
# draft
machine-title = 기계
# draft
log-title = 기록
# draft
setup-languages = 언어
# draft
language-partial = 지금까지 { $all }줄 가운데 { $lines }줄, 모두 초안. 나머지는 영어
# draft
language-draft = (초안)
# draft
refused-title = 하지 않음
# draft
refused-heading = 이 일은 하지 않았습니다
# draft
refused-safe = 아무것도 적지 않았습니다. 모두 그대로입니다.
# draft
refused-do = 돌아가서 다시 보세요.
