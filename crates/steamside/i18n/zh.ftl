### Chinese, in simplified characters: the lines that matter most at the sink, the machine and the chair.
### Written from memory; every line is a draft until somebody of the trade who grew up with the language
### has read it.

## Frame
# draft
place-now = 现在
# draft
place-ready = 可用
# draft
place-machine = 机器
# draft
place-log = 记录
# draft
language = 语言
# draft
book-demo = 演示：虚构内容
# draft
book-practice = 练习
# draft
did = 已记下：{ $what }
# draft
undo = 撤回
# draft
undo-release = 撤回：放到一边
# draft
foot-manual = 机器说明书和当地规定优先。
# draft
foot-person = 本工具帮助受过训练的人做决定，不是医疗器械。
# draft
back = 返回
# draft
not-known = 不清楚

## Dates
# draft
date-day = { $month }{ $day }日 { $weekday }
# draft
date-short = { $month }{ $day }日
# draft
weekday-1 = 周一
# draft
weekday-2 = 周二
# draft
weekday-3 = 周三
# draft
weekday-4 = 周四
# draft
weekday-5 = 周五
# draft
weekday-6 = 周六
# draft
weekday-7 = 周日
# draft
month-1 = 1月
# draft
month-2 = 2月
# draft
month-3 = 3月
# draft
month-4 = 4月
# draft
month-5 = 5月
# draft
month-6 = 6月
# draft
month-7 = 7月
# draft
month-8 = 8月
# draft
month-9 = 9月
# draft
month-10 = 10月
# draft
month-11 = 11月
# draft
month-12 = 12月

## Names
# draft
machine-name = 机器 { $machine }
# draft
run-name = 机器 { $machine }，第 { $run } 次运行
# draft
chair-name = { $chair } 号椅
# draft
pouch-count = { $count } 袋

## States
# draft
state-used = 已用过
# draft
state-soaking = 浸泡中
# draft
state-washed = 已清洗
# draft
state-disinfected = 已消毒
# draft
state-bagged = 已装袋
# draft
state-in-machine = 在机器里
# draft
state-to-check = 待检查
# draft
state-ready = 可用
# draft
state-use-now = 立即使用
# draft
state-opened = 已打开
# draft
state-set-aside = 已放到一边
# draft
state-retired = 已停用
# draft
state-missing = 找不到
# draft
outcome-did = 蒸汽起了作用
# draft
outcome-did-not = 蒸汽没有起作用
# draft
outcome-cannot-tell = 无法判断
# draft
outcome-none = 还没有数据

## Do not use
# draft
do-not-use = 不要使用
# draft
stop-mark = 指示标记没有变色
# draft
stop-wet = 潮湿
# draft
stop-torn = 破损
# draft
stop-dropped = 掉落过
# draft
stop-do-aside = 放到“不要使用”的托盘里。换一袋。
# draft
stop-another = 我有另一袋

## What may hurt
# draft
caution-hot = 烫。用夹子或隔热手套。放凉。有压力时绝不打开。
# draft
caution-sharp = 尖端锋利。铰链张开，尖端朝外。
# draft
caution-gloves = 处理脏工具和强效液体时戴厚手套和护目镜。
# draft
caution-manual = 机器说明书和当地规定优先。

## NOW
# draft
now-title = 现在
# draft
now-quiet = 现在没有要动手的事。
# draft
check-pouches = 检查 { $count } 袋
# draft
washed-waiting = { $count } 套已清洗，等待装袋
# draft
bagged-waiting = { $count } 袋等待进机器
# draft
go-check = 检查
# draft
go-pack = 装袋
# draft
go-start = 开始运行
# draft
go-chair = 在椅边打开

## Wash, pack, start
# draft
wash-title = 清洗和装袋
# draft
wash-look = 洗净、擦干、看过、上油了吗？生锈、变钝、松动的：拿出来。
# draft
wash-asks = 已清洗，手已干净：点你的标记
# draft
pack-cautions = 铰链张开。互不接触。最多装四分之三。
# draft
pack-asks = 已装袋：点你的标记
# draft
start-title = 开始运行
# draft
start-asks = 开始：点你的标记
# draft
strip-ends = 通常约 { $at } 结束
# draft
strip-by-clock = 只按时钟：看不到机器里面。
# draft
unload-asks = 已从机器取出，放在架上：点你的标记

## Look and release
# draft
look-marks = 所有标记都变色了吗？
# draft
look-dry = 都干燥、完好吗？
# draft
one-not = 有一个不行
# draft
looks-asks = 我看过每一袋。全部合格，放行：点你的标记
# draft
set-aside-run = 把整次运行放到一边

## Chair
# draft
chair-title = 在椅边打开
# draft
chair-look = 看一看：干吗？完好吗？标记变色了吗？
# draft
code-label = 袋上的四个符号
# draft
code-look = 查找
# draft
ready-title = 可用
# draft
machine-title = 机器
# draft
log-title = 记录
# draft
setup-languages = 语言
# draft
language-partial = 目前 { $all } 行中有 { $lines } 行，都是草稿；其余为英文
# draft
language-draft = （草稿）
# draft
refused-title = 没有完成
# draft
refused-heading = 这件事没有完成
# draft
refused-safe = 什么都没有写下。一切照旧。
# draft
refused-do = 返回再看一遍。
