### The lines of the pages. English is the language they are written in; the other files follow it.
### Short words, short sentences. A line claims no more than was measured or seen.

## Frame
program-name = Steamside
skip = Skip to the work
places = Places
language = Language
place-now = NOW
place-ready = READY
place-machine = MACHINE
place-log = LOG
book-demo = DEMO: invented
book-practice = PRACTICE
did = Written: { $what }
undo = Undo
undo-release = Take back: set aside
foot-manual = The machine’s own manual and your local rules come first.
foot-person = This tool helps a trained person decide. It is no medical device.
back = Back
since = Since
not-known = not known
minutes = min
seconds = s
one-fewer = One fewer: { $what }
one-more = One more: { $what }

## Dates
date-day = { $weekday } { $day } { $month }
date-short = { $day } { $month }
weekday-1 = Mon
weekday-2 = Tue
weekday-3 = Wed
weekday-4 = Thu
weekday-5 = Fri
weekday-6 = Sat
weekday-7 = Sun
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec

## Names
machine-name = Machine { $machine }
run-name = Machine { $machine }, run { $run }
run-unnamed = a run
run-unclaimed = a record that no run has claimed
chair-name = chair { $chair }
pouch-count = { $count ->
    [one] 1 pouch
   *[other] { $count } pouches
}

## Signs
sign-none = No sign yet. Add yours first.
sign-gone = (removed)
sign-label = Your sign: initials and a word, like HL fish
sign-example = HL fish
sign-add = Add this sign

## States
state-used = used
state-soaking = soaking
state-washed = washed
state-disinfected = disinfected
state-bagged = bagged
state-in-machine = in the machine
state-to-check = to check
state-ready = ready
state-use-now = use now
state-opened = opened
state-set-aside = set aside
state-away = away
state-retired = retired
state-missing = missing

## What a record proves
outcome-did = Steam did its work
outcome-did-not = Steam did not do its work
outcome-cannot-tell = Cannot tell
outcome-leak-pass = Leak test: within its limit
outcome-leak-fail = Leak test: beyond its limit
outcome-none = No numbers yet
contents-unwrapped = unwrapped, solid
contents-pouched = in pouches, solid
contents-hollow = hollow pieces inside
contents-unknown = nobody said what was inside
known-tapped = said by a person
known-scanned = scanned or typed
known-measured = measured
known-read = read off the display
known-by-clock = by the clock
known-worked-out = worked out
known-setting = a setting
known-from-paper = from paper
basis-record = Measured: from the machine’s own record. Judge { $judge }.
basis-reading = Read: a person read the numbers off the display. Judge { $judge }.
verdict-not-carried = But these numbers do not cover what was inside.
drying-as-set = Drying ran as set
drying-short = Drying ran short
drying-none = No drying
drying-cannot-tell = Cannot tell
drying-only-looks = A record cannot see whether a pouch is dry. Only looking tells.

## Reasons of a verdict
reason-hold-met = At temperature for { $held }; { $needed } was needed.
reason-hold-short = At temperature for { $held } only; { $needed } was needed.
reason-hold-border = At temperature for { $held }, too close to { $needed } to be sure.
reason-dip = The temperature dipped below { $set }. The longest time without a dip is { $held }.
reason-over-band = Hotter than the band: up to { $highest }, set { $set }.
reason-air-left = Air was left inside: the steam was { $deviation } off what its pressure promises.
reason-superheat = The steam was too dry: { $deviation } off what its pressure promises.
reason-gasket-leak = The chamber leaks. Look at the door seal.
reason-leak-rate = The pressure rises too fast in the leak test.
reason-sensor-offset = Temperature and pressure do not fit together: a sensor is off by about { $deviation }.
reason-sensor-frozen = A sensor stands still while the chamber moves.
reason-sensor-derived = One column is worked out from the other. It proves nothing more.
reason-no-pressure = The record has no pressure that can be used.
reason-gauge-as-absolute = The pressure counts from the air outside, not from zero. It was read so.
reason-set-unclear = Which temperature was set is not clear.
reason-unit-unclear = The unit of a column is not clear.
reason-gap-in-hold = Samples are missing in the time at temperature.
reason-truncated = The record ends too early.
reason-aborted = The record says that the run was stopped or failed.
reason-clock-jump = The machine’s clock jumped.
reason-rows-missing = Some lines of the record are missing.
reason-rows-doubled = Some lines stand there twice. They were left out.
reason-rows-swapped = Some lines stood in the wrong place. They were put right.
reason-drying-short = Drying ran short: { $drying }.
reason-drying-none = There was no drying.
reason-weak-heater = Heating up took long. The heater may be weak.
reason-clogged-filter = Air came in slowly. The filter may be clogged.
reason-load-not-covered = These numbers do not cover what was inside.
reason-unreadable = This file could not be read as a record.
place-time = { $from } to { $to }
place-lines = lines { $first } to { $last }

## DO NOT USE
do-not-use = DO NOT USE
stop-numbers = The numbers of the run were missed
stop-cannot-tell = The numbers cannot tell
stop-mark = A mark did not turn
stop-wet = Wet
stop-torn = Torn
stop-dropped = Dropped
stop-interrupted = The run was interrupted
stop-release-undone = The release was taken back
stop-recall = Recalled
stop-judged-worse = Judged again, and worse
stop-not-sure = Somebody was not sure
stop-unknown = This code is not in this book.
stop-unknown-do = Read it again. If it is still not here, do not use the pouch.
stop-opened = Opened already: { $at }. A pouch is used once.
stop-too-late = Its time is up. It counts as used again.
stop-bagged = Not yet in a machine.
stop-to-check = Not checked yet.
stop-apart = Taken apart. A pouch is never used twice.
stop-do-aside = Put it in the tray for DO NOT USE. Take another pouch.
stop-do-used = Put the set in the used bin. Take another pouch.
stop-do-start = Put it with the bagged ones. Take another pouch.
stop-do-check = Put it back with its run. Take another pouch.
stop-another = I have another
stopped-1 = Put all of it in the tray for DO NOT USE.
stopped-2 = Open, wash again, dry, new pouch, new mark.
stopped-3 = Run it again, with fewer pouches.
stopped-4 = Twice in a week: have the machine looked at.
contradicted = Two entries contradict each other; the safer one counts.

## Cautions
caution-hot = HOT. Tongs or heat gloves. Let it cool. Never open under pressure.
caution-sharp = Sharp tips. Hinges open, tips away from you.
caution-gloves = Thick gloves and eye cover for soiled tools and strong liquids.
caution-manual = The machine’s manual and your local rules come first.

## Now
now-title = Now
now-quiet = Nothing needs hands.
check-pouches = { $count ->
    [one] Check 1 pouch
   *[other] Check { $count } pouches
}
washed-waiting = { $count ->
    [one] 1 set washed, waiting for a pouch
   *[other] { $count } sets washed, waiting for pouches
}
bagged-waiting = { $count ->
    [one] 1 pouch waiting for a machine
   *[other] { $count } pouches waiting for a machine
}
unclaimed-title = A record that no run has claimed
unclaimed-clock = Machine’s clock: { $clock }
apart-title = { $count ->
    [one] 1 pouch to take apart
   *[other] { $count } pouches to take apart
}
apart-do = Open, wash again, dry, new pouch, new mark, new run.
apart-open = They are open and in the used bin
apart-asks = Taken apart: tap your sign
go-check = CHECK
go-pack = PACK
go-start = START A RUN
go-run = About this run
go-claim = WHICH RUN?
go-chair = OPEN AT A CHAIR

## Wash and pack
wash-title = Wash and pack
bin-about = { $count ->
    [0] The bin is empty
    [one] Bin: about 1 set
   *[other] Bin: about { $count } sets
}
wash-look = Washed, dry, looked at, oiled? Rust, dull, loose: take it out.
wash-asks = Washed, hands clean: tap your sign
kinds-none = No sets counted yet
kinds-none-do = Say once which sets you have and how many.
pack-none = Nothing washed waits for a pouch
pack-none-do = Tap your sign under the washed sets first.
pack-kind = { $count ->
    [one] Pack { $kind }: 1 washed
   *[other] Pack { $kind }: { $count } washed
}
pack-cautions = Hinges open. Pieces not touching. Three quarters full at most.
pack-how-many = Pouches
pack-into = Into
pack-pouched = a pouch each
pack-open = open, on a numbered tag, for use at once
pack-hollow = something hollow is inside (a bore, a tube)
pack-asks = Packed: tap your sign

## Start
start-title = Start a run
start-no-machine = No machine is free
start-no-pouch = No pouch waits for a machine
start-inside = { $count ->
    [one] 1 pouch goes in
   *[other] { $count } pouches go in
}
start-contents = What the steam has to get through: { $contents }.
start-which = Which pouches
start-over = More than this tray was tested with ({ $most }).
start-programme = Programme, as the machine calls it
start-cautions = Nothing stacked, nothing touches the wall, water checked, door shut.
start-asks = START: tap your sign

## A run in its machine
strip-ends = Usually ends about { $at }
strip-time-up = Time is up: look at the machine
strip-too-few = Too few runs to tell when it ends
strip-started = Started { $at }.
strip-usual = { $runs ->
    [one] Usual here: { $low } to { $high } min, from 1 run.
   *[other] Usual here: { $low } to { $high } min, from { $runs } runs.
}
strip-by-clock = By the clock: nothing here sees into the machine.
unload-asks = Out of the machine, on the rack: tap your sign
unloaded-at = Out of the machine:

## Machine
machine-title = Machines
machine-none = No machine yet
machine-out = Out of use
machine-out-do = Take out of use
machine-back-asks = Back in use: tap your sign
machine-last = Last runs
machine-no-runs = None yet
machine-clock = Its clock: { $ahead } min ahead
machine-clock-ahead = Minutes that its clock runs ahead (minus: behind)
machine-clock-asks = Clock compared: tap your sign
reads-title = How its records read: { $what }
reads-how = What you say here goes before the file. Say only what you read off the display or in its manual.
reads-temperature = Its temperatures are in
reads-pressure = Its pressures are in
reads-reference = With the door open, its pressure shows
reads-gauge = about 0 (gauge)
reads-absolute = the air: about 100 kPa, 1 bar, 14.7 psi; less high up (absolute)
reads-gauge-short = gauge
reads-absolute-short = absolute
reads-dates = Its dates begin with
reads-day-first = the day first
reads-month-first = the month first
reads-altitude = Height of the salon above the sea, in metres
reads-as-file = as the file says
reads-asks = I know this: tap your sign
ask-title = One question
ask-units = In which units does this machine write its temperatures and pressures, and how its dates?
ask-gauge = The file says that its pressures count from zero, and they look as if they count from the air outside: what does this machine show with the door open?
ask-set = Which temperature was set? Only the display or the print-out tells; without it, run it again.
ask-which = Which machine wrote this file?
ask-kept = The answer is kept for that machine, and its records that could not tell are judged again. Not sure? Leave it: nothing is released meanwhile.
drift-title = Changing from run to run
drift-line = { $figure }: { $change } since about { $since }.
drift-very-sure = Very sure.
drift-sure = Sure.
drift-just-past = Just past the mark.
drift-part-heater = It points to the heater: scale, a loose connection, a weak element.
drift-part-seal = It points to the door seal: dirt, cuts, wear.
drift-part-pump = It points to the vacuum pump.
drift-part-filter = It points to the air filter: clogged or wet.
drift-part-filter-fast = It points to the air filter: new, torn, or left out? Without it, unfiltered air gets in.
drift-part-drain = It points to the drain: strainer, exhaust valve, hose.
drift-part-unclear = Which part it is, these figures do not tell.
drift-share = (This part: { $share } in 100. Common practice, no source.)
drift-proven = Seen in this run
drift-ask = This says what changed, not what is broken: ask the engineer. No record is judged by it. Off, cold and without pressure before anyone touches a part; its own manual comes first.
drift-heat-up = Time to heat up
drift-air-in = Time to let in air
drift-first-pulse = Time of the first vacuum
drift-pulse-depth = Depth of the vacuum before the steam
drift-dry-depth = Vacuum while drying
drift-leak = Leak while the vacuum stands
drift-exhaust = Time to let off the steam
drift-total = Length of the run beyond its known parts
drift-plateau-low = Lowest while at temperature
drift-plateau-high = Highest while at temperature
drift-plateau-length = Time at temperature
drift-saturation = Distance from what the pressure promises
take-title = Take in a record
take-file = File from the machine
take-do = Take it in

## A run
run-started = Started
run-programme = programme { $programme }
run-undone = start undone
run-released = released
run-inside = What was inside
trace-title = The trace of the run
trace-temperature = temperature
trace-saturation = what the pressure promises
trace-pressure = pressure
trace-band = set temperature and band, { $from } to { $to } °C
figures-title = The figures, and where they come from
figure = Figure
value = Value
where-from = Where from
figure-set = Set temperature
figure-held = Time at temperature
figure-needed = Time needed
figure-lowest = Lowest in that time
figure-highest = Highest in that time
figure-deviation = Off what the pressure promises
figure-drying-time = Length of drying
figure-drying = Drying
figure-total = Length of the record
figure-inside = What was inside
figure-proven = Proven for
figure-proven-none = nothing
limits-title = Limits used

## The three looks
looks-title = { $count ->
    [one] Look at 1 pouch
   *[other] Look at all { $count } pouches
}
looks-again = One was not good. Look at all the others again.
look-numbers = Numbers reached?
look-numbers-yes = Yes
look-marks = ALL marks turned?
look-marks-how = Every pouch, front and back. Compare with the colour on the pack.
look-dry = ALL dry and whole?
look-dry-how = No drop, no damp paper, no tear, none dropped. Dry later is still wet.
look-inner = The indicator inside the load: end point reached?
look-inner-how = Type 5 or 6, in the middle of the load. Without a record it has to be there.
inner-not = NO, OR NOT THERE
one-not = ONE NOT
which-marks = Which marks did not turn?
which-dry = Which, and what is it?
marks-reach = One mark stops the whole run.
dry-reach = Torn or dropped: that pouch. One wet: that pouch, and look at all again. Two wet: all.
one-not-asks = I saw it: tap your sign
looks-asks = I looked at every pouch. ALL GOOD, RELEASE: tap your sign
no-release-did-not = No release: the numbers were missed
no-release-cannot-tell = No release yet: the numbers cannot tell
no-release-not-carried = No release: these numbers do not cover what was inside
no-release-do = Set aside. Open, wash again, dry, new pouch, new mark, new run.
no-release-cannot-tell-do = Take in the record, or read three numbers off the display. If that is not possible: run it again.
not-sure = Not sure?
set-aside-run = SET THE WHOLE RUN ASIDE
numbers-title = Where do the numbers come from?
numbers-file = From a file
numbers-read = Off the display or the print-out
numbers-read-how = Type only what you read there yourself.
read-lowest = Lowest temperature while at temperature
read-degrees = Degrees
read-held = Time at temperature
read-pressure = Pressure, if it shows one
read-unit = Unit of the pressure
unit-kpa-abs = kPa absolute
unit-kpa-gauge = kPa gauge
unit-bar-abs = bar absolute
unit-bar-gauge = bar gauge
unit-psi-gauge = psi gauge
read-asks = I read this: tap your sign
lift-title = Was this stop made by mistake?
lift-only = Only a stop made by mistake can be lifted. A failed number, mark or look has no way back but a new run.
lift-which = Which pouches
lift-why = Why
lift-mistake = stopped by mistake
lift-paperwork = only paperwork was missing, and it is here now
lift-asks = Lift the stop: tap your sign

## Ready
ready-title = Ready
ready-none = The shelf is empty
ready-none-do = Pouches stand here after their run was checked and released.
use-now-until = Use now: until { $at }
use-now-how = On its tag, in a covered tray. Cool in air, never under the tap. After that time it counts as used.
shelf-kind = { $count ->
    [one] { $kind }: 1 ready
   *[other] { $kind }: { $count } ready
}
shelf-front = Front: take from here
shelf-more = and { $count } more
chairs-today = { $count ->
    [0] Nothing opened today
    [one] 1 opened at the chairs today
   *[other] { $count } opened at the chairs today
}

## Chair
chair-title = Open at a chair
chair-which = Which chair?
chair-order = Code first, put the phone down, clean hands, gloves, then open in front of the client.
chair-look = Look: dry? whole? mark turned?
chair-not-good = Not good?
code-label = The four signs on the pouch
code-look = LOOK IT UP
code-clear = clear
code-other = Another pouch
pouch-released = Released
opened-asks = OPENED HERE: tap your sign
opened-asks-chair = OPENED at chair { $chair }: tap your sign
code-keys = Keys for the four signs
camera-start = CAMERA: look at the code
camera-picture = What the camera sees
camera-stop = Camera off
camera-looking = Hold the square code in the picture.
camera-refused = The camera may not be used here. Take a photo, or tap the four signs.
photo-label = Photo of the square code
photo-read = READ THE PHOTO
photo-not-kept = It is read here and not kept.
photo-no-picture = This is no picture that can be read here.
photo-too-large = The photo is too large.
photo-no-code = No code was found in the photo.
photo-other-code = That is a code, but not one of our pouches.
photo-several = There is more than one pouch in the picture.
photo-again = Nothing was written. One pouch alone, nearer, in good light, as JPEG or PNG. Or tap the four signs.
after-title = It was opened before: link it now
after-when = When was it opened?
after-minutes = about { $minutes } minutes ago
after-asks = LINK IT AFTER: tap your sign
need-another = Need another set
another-title = Need another
another-used = Opened: it counts as used. Put it in the used bin.
another-none = No { $kind } set is ready
another-none-do = Use single-use tools, or ask at the sink. Nothing unchecked goes to a client.
another-take = TAKE { $code }
blood-title = Blood?
blood-1 = Stop. Say what happened.
blood-2 = Put on fresh gloves.
blood-3 = Rinse the wound with water, press a clean pad on it, cover it.
blood-4 = To stop bleeding: from a single-use pack only. Never a shared stick or bottle.
blood-5 = The tool goes in the used bin, and what is single-use in the waste.
blood-6 = Clean and disinfect what the blood touched. Gloves off, wash hands.
blood-7 = Write the incident line: time, chair, pouch, what happened.
blood-exposed = Blood of one person in a wound or an eye of another? Call a clinician or the health authority now.
blood-rules = Local rules come first.
stop-spare = Where is a spare?
unknown-aside = DO NOT USE: I have another
unknown-salon = From another of our salons
unknown-salon-do = This book cannot know whether it was checked there. Put it in the tray for DO NOT USE and ask that salon.
unknown-roll = From an old roll of labels
unknown-roll-do = An old label proves no run. Open it, wash again, dry, new pouch, new label.

## Labels
labels-title = Codes and labels
labels-none = Nothing was packed in that act.
labels-print = Print
labels-hand = No printer? Write the code on the flap or the film with a soft pen. Never on the paper.
labels-steam = Ordinary office labels are not made for steam. Try three labels in three runs first.
labels-stock = Labels
labels-letter = Letter sheet, 30 labels
labels-a4 = A4 sheet, 21 labels
labels-roll = roll, 25 × 25 mm
labels-start = First label still on the sheet
labels-show = Show this
label-sentence = Packed { $day }. Look: dry? whole?
print-page = page { $page } of { $of }
print-printed = Printed { $at }
print-scale = 50 mm. If it is not, print again at 100 %.
print-stock = Office labels are not made for steam: try three of them first.
print-machine = Machine
print-run = Run
print-machine-short = M
print-run-short = R
labels-refused = The labels could not be drawn. Write the codes by hand; they are good as they are.

## Log
log-title = Log
log-empty = Nothing is written yet.
log-later = written later: { $at }
log-linked = linked after: { $at }
log-undone = taken back
log-older = Older
log-newest = Newest
log-station = station { $station }
log-program = by itself
log-verify = Each line holds on to the one before it. steamside verify shows whether one was changed.
go-recall = Recall

## Recall
recall-title = Recall
recall-how = From the run after the last good spore test to the moment the machine was taken out of use.
recall-authority = The health authority leads. Call it before you call clients. This list says who was here, and nothing about risk.
recall-machine = Machine
recall-from = From
recall-to = To
recall-do = Show the list
recall-runs = { $count ->
    [one] 1 run
   *[other] { $count } runs
}
recall-shelf = { $count ->
    [one] 1 pouch not opened: take it off the shelf
   *[other] { $count } pouches not opened: take them off the shelf
}
recall-unlinked = { $count ->
    [one] 1 opened without a visit
   *[other] { $count } opened without a visit
}
recall-gone = { $count ->
    [one] 1 out of the round
   *[other] { $count } out of the round
}
recall-visits = { $count ->
    [one] 1 visit
   *[other] { $count } visits
}
recall-date = Day
recall-time = Time
recall-chair = Chair
recall-code = Code
recall-of-run = Run
recall-start-unknown = The run to count from is not in the book: everything is on the list.
recall-nothing = Nothing was reached.
recall-from-run = Recall from this run on
recall-set-aside = DO NOT USE: set all of these aside

## Unclaimed
claim-title = Which run is this?
claim-how = Nothing is guessed. Compare the clock of the machine with the start of the run.
claim-no-clock = The record has no clock.
claim-taken = It came in
claim-none = No run without a record fits. Start one, or leave the record here.
claim-asks = This run: tap your sign
claim-done = This record belongs to a run now.

## Setup
setup-title = Setup
setup-machines = Machines
setup-machine-add = Add a machine
setup-signs = Signs
setup-signs-how = A sign is yours alone: initials and a word, no full name. Tapping it does the act and signs it.
setup-sets = Sets
setup-sets-how = Count once. The bin is worked out from then on.
setup-languages = Languages
setup-zone = Time zone: { $zone }
setup-no-device = This tool shows what a record proves and what people saw. It does not show what nobody can know.
first-all = Set up everything else
machine-number = Number on the door
machine-air = How does it get the air out?
air-vacuum = with a vacuum pump
air-gravity = steam pushes it out
air-not-known = not known
machine-files = it writes a file for each run
machine-no-files = no files
machine-most = tray tested with { $most } pouches
machine-most-not-known = most pouches not known
machine-most-ask = Most pouches that its tray was tested with
machine-add = Add this machine
person-left = No longer here
person-left-asks = Remove this sign: tap yours
sets-kind = { $kind }: { $owned } owned
sets-new = Another kind of set
sets-kind-label = Kind, in small letters
sets-kind-example = manicure
sets-owned = How many the salon owns
sets-used = In the used bin now
sets-washed = Washed, not in a pouch
sets-asks = Counted: tap your sign
language-own = the language that the lines are written in
language-drafts = { $drafts } of { $lines } lines are drafts: nobody of the trade who grew up with the language has read them yet
language-checked = all { $lines } lines read by somebody of the trade
language-partial = { $lines } of { $all } lines so far, all of them drafts; the rest is in English
language-draft = (draft)

## Lines of the log
line-washed = { $count ->
    [one] 1 set washed ({ $kind }).
   *[other] { $count } sets washed ({ $kind }).
}
line-packed = { $count ->
    [one] 1 set packed ({ $kind }).
   *[other] { $count } sets packed ({ $kind }).
}
line-started = { $count ->
    [one] { $run } started with 1 pouch.
   *[other] { $run } started with { $count } pouches.
}
line-unloaded = { $run }: out of the machine.
line-taken = { $count ->
    [one] A record taken in, 1 cycle.
   *[other] A record taken in, { $count } cycles.
}
line-claimed = The record belongs to { $run }.
line-judged = { $run }: { $outcome } ({ $known }).
line-looked = { $run } looked at.
line-looked-inner = The indicator inside did not reach its end point.
line-looked-marks = Mark not turned: { $what }.
line-looked-wet = Wet: { $what }.
line-looked-torn = Torn: { $what }.
line-looked-dropped = Dropped: { $what }.
line-released = { $count ->
    [one] { $run }: 1 pouch released.
   *[other] { $run }: { $count } pouches released.
}
line-set-aside = Set aside: { $what }. { $why }.
line-lifted-mistake = Stop lifted: { $what }. Made by mistake.
line-lifted-paperwork = Stop lifted: { $what }. Paperwork was missing.
line-opened = { $what } opened.
line-opened-chair = { $what } opened at chair { $chair }.
line-apart = Taken apart: { $what }.
line-undone = An earlier entry was taken back.
line-opened-book = The book begins. Time zone { $zone }.
line-zone = Time zone: { $zone }.
line-joined = { $sign } works here.
line-left = { $sign } no longer works here.
line-machine = { $machine } is here: air out { $air }.
line-clock = The clock of { $machine } runs { $ahead } ahead.
line-reads = How the records of { $machine } read: { $what }.
line-out = { $machine } out of use.
line-back = { $machine } back in use.
line-owned = { $kind }: { $count } owned, counted.
line-counted = { $kind }: { $used } used, { $washed } washed, counted.

## Not done
refused-title = Not done
refused-heading = This was not done
refused-safe = Nothing was written. Everything is as it was.
refused-do = Go back and look again.
refused-no-sign = No sign stands under it.
    .do = Go back and tap your own sign.
refused-no-such-act = There is no such act.
refused-no-such-page = There is no such page, or it is about something that is not in this book.
    .do = Go back to NOW.
refused-no-such-person = That sign is not in this book.
    .do = Go back and tap your own sign.
refused-no-such-machine = That machine is not in this book.
refused-no-such-pouch = That pouch is not in this book.
    .safe = Nothing was written. Do not use the pouch.
refused-no-such-run = That run is not in this book, or its start was undone.
refused-no-such-record = That record is not in this book.
refused-nothing-chosen = Nothing was chosen.
    .do = Go back and choose at least one.
refused-nothing-counted = The count is zero.
    .do = Go back and count again.
refused-too-many = That is more than { $most } in one go.
    .do = Look at the number. If it is right, enter it in two parts.
refused-field-missing = Something is missing: { $field }.
    .do = Go back and fill it in.
refused-field-misread = This could not be read: { $field }.
    .do = Go back and enter it again: numbers as digits, words in small letters.
refused-not-to-hand = Pouch { $code } is in a machine, opened or out of the round.
refused-opened-before = Pouch { $code } was not yet released at that time.
    .do = Go back and choose a later time. If it was opened before its release, set it aside.
refused-machine-number = A machine has a number from 1 to 99.
refused-number-taken = There is a machine { $machine } already.
    .do = Go back and give the next number.
refused-clock-offset = More than a year is not a clock that runs ahead.
    .do = Compare the machine’s clock with this page again.
refused-machine-out = Machine { $machine } is out of use.
    .safe = Nothing was written. Do not start it.
    .do = Use another machine.
refused-machine-full = There is a run in machine { $machine } already.
    .do = Take its load out first: tap your sign under that run.
refused-nothing-inside = No pouch was chosen.
    .do = Go back and choose what goes in.
refused-not-bagged = Pouch { $code } does not wait for a machine.
    .do = Look at the code on the pouch again.
refused-over-tested = More than { $most } pouches: the tray was not tested with so many.
    .safe = Nothing was written. Too full a tray gives wet pouches.
    .do = Take some out, or go back and say that you know.
refused-already-unloaded = That run is out of its machine already.
    .do = Go on with the check.
refused-not-unloaded = The load is still in the machine.
    .safe = Nothing was released.
    .do = Take it out first: tap your sign under the run.
refused-no-numbers = There are no numbers for this run yet.
    .safe = Nothing was released. Do not use these pouches.
    .do = Take in the record, or read three numbers off the display.
refused-nothing-to-check = No pouch of this run waits for a look.
refused-not-in-this-run = A pouch that was named was not in this run.
    .safe = Nothing was released.
    .do = Look at the code on the pouch again.
refused-which-mark = Which mark did not turn?
    .safe = Nothing was released. Do not use these pouches.
    .do = Go back and choose the pouches. Not sure which? Set the whole run aside.
refused-which-wet = Which pouch is wet, torn or dropped?
    .safe = Nothing was released. Do not use these pouches.
    .do = Go back and choose the pouches. Not sure which? Set the whole run aside.
refused-no-talking-back = The record shows that the numbers were missed. A reading does not change that.
    .safe = Nothing was released. Do not use these pouches.
    .do = Open, wash again, dry, new pouch, new mark, new run.
refused-not-stopped = Pouch { $code } is not set aside.
refused-no-way-back = Pouch { $code } failed a number, a mark or a look.
    .safe = It stays set aside. Do not use it.
    .do = Open, wash again, dry, new pouch, new mark, new run.
refused-undone-already = That was taken back already.
refused-nothing-to-undo = There is nothing to take back.
refused-no-undo = This cannot be taken back by a tap.
    .do = It stays in the log. If it is wrong, count again or set aside.
refused-run-has-record = That run has a record already.
refused-record-claimed = That record belongs to a run already.
refused-record-deleted = The file of that record was deleted.
    .safe = Nothing was written. What was judged before stands.
    .do = Take the file in again.
refused-record-unreadable = That file could not be read as a record.
    .safe = Nothing was released. Do not use these pouches.
    .do = Read three numbers off the display, or run it again.
refused-sign-length = A sign has 1 to { $most } characters.
    .do = Go back: initials and a word.
refused-sign-taken = The sign { $sign } is taken.
    .do = Go back and choose another word.
refused-no-file = No file was chosen.
    .do = Go back and choose the file from the machine.
refused-empty-file = That file is empty.
    .do = Copy it from the machine again.
refused-large-file = That file is larger than { $most } MB.
    .do = Choose the record of one run.
refused-upload-cut = The file did not arrive whole.
    .do = Send it again.
refused-zone = { $zone } is not the name of a time zone.
    .do = Write it like America/Chicago.
refused-folder = The folder cannot be used: { $why }.
    .do = Choose a folder that this program may write in.
trouble-title = The program could not go on
trouble-safe = What was written before is safe. This last tap may not be written.
trouble-do = Open NOW and look whether it is there. If this comes again, start the program again.

refused-no-answer = A look needs an answer.
refused-two-answers = Two answers at once: all good, and one not.
    .do = Look again and answer once. Until then nothing is released.
refused-undo-late = Too late for undo.
    .do = Write what is true now; the log keeps both.
refused-undo-moved-on = More has happened since, so this cannot be taken back.
    .do = Set aside what must not be used.
refused-clock-far = The clock of this record ({ $clock }) is far from the start of that run.
    .do = If the machine’s clock is wrong, set it on the page MACHINE first. Otherwise it is another run’s record.
refused-not-a-run = This record is of a leak test, not of a run.

unclaimed-more = { $count ->
    [one] One more record without a run
   *[other] { $count } more records without a run
}

refused-no-altitude = This pressure counts from the air, and how high the salon lies is not known.
    .do = Set the height above the sea once, on the page MACHINE, under the machine’s own settings. Then type the numbers again.

## The day plan
plan-sets = { $count } { $kind } { $count ->
    [one] set
   *[other] sets
 }
plan-and = { $one } and { $other }
plan-run-needed = Start the { $cycle } cycle on machine { $machine } at { $time } with { $sets }. Needed at { $when }: { $missing }.
plan-run-tomorrow = Start the { $cycle } cycle on machine { $machine } at { $time } with { $sets }. Needed tomorrow morning: { $missing }.
plan-run-reserve = Start the { $cycle } cycle on machine { $machine } at { $time } with { $sets }: they are a reserve.
plan-unmet = Missing at { $time }: { $sets }.
plan-way-single-use = Take a single-use kit at { $time } instead of { $sets }.
plan-way-move = Move the { $time } appointment to { $to }.
plan-way-earlier = Begin { $minutes } minutes earlier.
plan-way-machine = One more machine like machine { $machine }.
plan-way-person = One more person for the washing.
plan-way-all = Then nobody waits.
plan-way-part = Then fewer wait.
kind-manicure = manicure
kind-pedicure = pedicure
kind-efile-bits = e-file bit
kind-bits = e-file bit
kind-nippers = nipper
kind-foot-kit = foot
kind-art-tools = nail art
cycle-fast = fast
cycle-middle = middle
cycle-long = long
plan-title = The day
plan-fault = The day cannot be planned.
plan-fault-do = Look at the figures
plan-none = Nothing is planned for today.
plan-none-do = Add appointments or working times, and the day is planned from them.
go-visits = Appointments
go-sets = How many sets
go-plan = The day plan
plan-runs = Runs to start
plan-no-runs = No run is needed.
plan-dropped = Not any more: { $cycle } cycle on machine { $machine } at { $time }.
plan-accept = Agree to this plan
plan-accept-changes = Agree to these changes
plan-spares-out = Spares are given out: with them kept back, somebody would wait.
plan-tape = The day as a drawing
plan-tape-alt = { $visits } appointments, { $runs } runs. The list above says the same.
plan-chair = Chair { $chair }
plan-machine = Machine { $number }
plan-works = The day works: nobody waits.
plan-works-known = As far as is known the day works: nobody waits.
plan-short-tomorrow = Today works. Tomorrow morning { $count } { $count ->
    [one] set is
   *[other] sets are
 } short.
plan-somebody-waits = Somebody would wait.
plan-ways = What would help?
plan-unknown = { $count } { $count ->
    [one] appointment has
   *[other] appointments have
 } no service yet: what it needs is not in the plan.
plan-proven-not = It is not proven that no plan does better.
plan-proven-unmet = Proven: no plan lets fewer wait.
plan-proven-short = Proven: no plan lets fewer wait or leaves more ready for tomorrow.
plan-proven-runs = Proven: no plan lets fewer wait, leaves more ready for tomorrow, or does it with fewer runs.
plan-new = New
plan-in = in { $minutes } minutes
plan-where-from = Where the figures come from
plan-wash-time = Washing a set: { $median } minutes here, half of the times { $low } to { $high } (worked out from { $count } times).
plan-wash-time-typical = Washing a set: a setting; too few times in the book to tell.
plan-pack-time = Packing a set: { $median } minutes here, half of the times { $low } to { $high } (worked out from { $count } times).
plan-pack-time-typical = Packing a set: a setting; too few times in the book to tell.
plan-hands-rota = Hands: the working times in the book, less appointments and lunch.
plan-hands-assumed = Hands: nobody gave working times, so the whole team is taken to be there.
plan-order-salon = First nobody waits, then tomorrow, then as little as can be without drying, then few runs; what lies overnight is dried in full before money is saved.
plan-no-claim = A plan says when to run, never that a load may be used.
ways-title = What would help
ways-heading = Each of these was planned, none is a guess.
ways-none = Nothing that was tried helps enough.
ways-known = Worked out. More may help than was tried here.
refused-plan-is-old = The plan no longer fits the machines. Nothing was written. Open the plan again.

## Visits, services, working times
visits-title = Visits
visits-add = Add a visit: service, then time
visits-no-services = No service is described yet. A service says which sets it needs.
visits-when = { $service }: at what time?
visits-chair = Chair (may stay empty)
visits-today = Today
visits-tomorrow = Tomorrow
visits-count = { $count ->
    [one] One visit
   *[other] { $count } visits
}
visits-unknown = service not known
visits-unknown-how = Where the service is not known, no set is planned. Say which it is, or bring the calendar here once.
visits-which = Service
visits-choose = Choose
visits-say = That is it
visits-closed = Closed on this day.
visits-open-after-all = Open after all
visit-booked = booked
visit-cancelled = called off
visit-missed = did not come
visit-late-by = { $count } min late
visit-put-back = +{ $count } min late
visit-did-not-come = Did not come
visit-call-off = Called off
chair-number = chair { $chair }
rota-title = Who works
rota-none = Nobody is down for today or tomorrow. The plan then counts on everyone who signs here.
rota-add = Say who works when
rota-lunch = lunch
rota-not = Does not work
rota-day = Day
rota-from = From
rota-to = To
rota-lunch-from = Lunch from
rota-lunch-to = Lunch to
rota-weeks = The same in so many weeks after it
rota-who = Who?
bring-title = Calendar
bring-how = A calendar file (.ics) or a table (.csv) of appointments. Names stay outside: the book keeps times and services only.
bring-file = File
bring-do = Take it in
brought-title = What the file changed
brought-booked = { $count ->
    [one] One visit is new
   *[other] { $count } visits are new
}
brought-changed = { $count ->
    [one] One visit has changed
   *[other] { $count } visits have changed
}
brought-off = { $count ->
    [one] One visit was called off
   *[other] { $count } visits were called off
}
brought-same = { $count ->
    [one] One visit was here already
   *[other] { $count } visits were here already
}
brought-names = Titles are shown on this page only. They are not kept.
ask-how = Choose the words that mean the service, without a name, and the service. Next time it is known.
ask-no-services = Describe your services first; then bring the file once more.
ask-count = { $count ->
    [one] One visit, such as
   *[other] { $count } visits, such as
}
ask-words = Or type the words
ask-later = ask me another time
ask-no-visit = no client: no set is needed
ask-do = Keep these answers
closed-title = A whole day
closed-asks = “{ $title }”, from { $from } to { $to }: is the salon closed?
closed-do = Closed
odd-title = Could not be taken
odd-count = { $count ->
    [one] One entry was left out.
   *[other] { $count } entries were left out.
}
odd-zone = cannot tell which time zone “{ $zone }” is
odd-rule = cannot follow the rule by which it repeats
odd-time = cannot tell when it is
odd-do = Book these by hand, above all those of today.
services-title = Services and figures
services-how = A service says how long it takes and which sets it needs. The plan of the day rests on it.
service-add = A new service
service-word = What it is called
service-minutes = Minutes
service-needs = Sets that one client needs
service-weight = How bad one missing set is (1 to 9)
service-basin = Cleaning the foot basin, minutes (0: none)
service-keep = Keep
service-end = No longer offered
minutes-count = { $count } min
hands-title = How long hands take here
hands-wash = Washed, dried, looked at, one set
hands-pack = Into a pouch, one set
hands-spread = { $median } min in the middle; half of the times lie between { $lower } and { $upper } ({ $count } times)
hands-none = not measured yet
hands-how = Worked out from the taps: from a person’s tap before to the one that says it is done. So it is rather too long than too short.
kind-figures-title = Kinds of sets
kind-mass = Mass of one set, g
kind-hand = Hands for one set, minutes
kind-pouch = A pouch costs, cents
kind-target = Ready at the end of the day
kind-spares = Spares that no visit is promised
machine-figures-title = Programmes of the machines
machine-warm = Stays warm for, minutes
programme-more = One more programme
programme-word = What it is called (empty: none)
programme-cold = Minutes when cold
programme-warm = Minutes when warm
programme-mass = Most mass, g
programme-load = Loading, minutes
programme-unload = Taking out, minutes
programme-cool = Cooling, minutes
programme-cost-cold = Costs when cold, cents
programme-cost-warm = Costs when warm, cents
programme-drying = Drying
programme-wrapped = Takes sets in pouches
drying-is-none = none: for use at once
drying-is-short = short
drying-is-full = in full
rules-title = What holds for every plan
rules-how = Times and what counts first
rules-passive = Washed sets dry before packing, minutes
rules-immediate = A set without drying is opened within, minutes
rules-order = What counts first
order-salon = Nobody waits; sets that lie overnight are dry before money is saved
order-comparing = The published order, for comparing
figures-typical = typical, until you set your own
figures-keep = Keep these figures
line-visit-booked = Booked for { $at }: { $service }.
line-visit-moved = A visit is now at { $at }.
line-visit-is = A visit is for { $service }.
line-visit-late = A visit begins { $count } min later.
line-visit-off = A visit was called off.
line-visit-missed = A client did not come.
line-shift = { $sign } works { $from } to { $to }.
line-shift-ended = A working time was taken out.
line-closed = Closed on { $day }.
line-open-again = Open on { $day } after all.
line-key = A key was made by which calendars are recognised.
line-service = Service { $service }: { $count } min, needs { $needs }.
line-service-ended = { $service } is no longer offered.
line-learnt = A phrase in titles means { $service }.
line-learnt-no-visit = A phrase in titles means: no client.
line-kind-figures = Own figures for { $kind }.
line-machine-figures = Own programmes for { $machine }.
line-day-rules = What holds for every plan was set.
line-plan = A plan of { $count ->
    [one] one run
   *[other] { $count } runs
} was accepted.
line-implement-set = Implement { $what }: { $length } × { $width }, { $mass }.
line-implement-ended = { $what } is no longer used.
line-set-of = A { $kind } set is { $pieces }.
line-pouch-set = Pouch size { $what }: { $width } × { $length }.
line-pouch-ended = Pouch size { $what } is no longer kept.
line-inside-set = The inside of { $machine } was measured: { $count ->
    [one] one tray
   *[other] { $count } trays
}.
line-tray-weighed = Tray weighed: { $grams } with { $sets }.
line-programme-set = { $programme } on { $machine }, by its manual: { $temperature } for { $hold } s, { $count } min drying.
refused-no-calendar = This file is neither a calendar nor a table of appointments that can be read.
    .do = Export it once more as .ics, or as a table with a date, a time and a service.
refused-one-calendar = One calendar at a time.
    .do = Go back and choose one file.
refused-no-such-service = This book knows no such service.
refused-no-such-visit = This book knows no such visit.
refused-visit-over = That visit was called off or missed already.
refused-too-late = A visit is put back by { $most } min at most.
    .do = Move it in the calendar, or book it anew.
refused-off-in-calendar = That visit comes from a calendar.
    .do = Call it off there, and bring the file in again.
refused-phrase = These words cannot be learnt.
    .do = Go back and type a few words that mean the service.
refused-said-already = That was said already.
refused-service-taken = There is a service { $word } already.
    .do = Go back and choose another word.
refused-no-programme = A machine needs at least one programme.
refused-shift = That working time does not fit together.
    .do = Go back: from before to, lunch inside, at most twelve weeks.
refused-no-such-shift = This book knows no such working time.
titles-ask = Which sets do these need?
titles-which = They mean
own-title = How many sets to own
own-none = No day to reckon with
own-none-do = Book visits for the coming days, or bring in a calendar: the busiest day of a week is lived many times.
own-how = Worked out, not measured: the busiest day that is booked, { $day }, lived { $days } times with what may come in between.
own-kind = { $kind }: { $owned } owned now
own-now = With { $owned }, nobody waits on { $share } of 100 days ({ $low } to { $high }).
own-plot = Days of 100 on which nobody waits, by the number of sets: { $kind }
own-axis = sets owned (ring: now)
own-numbers = The same in numbers
own-enough = { $owned } would be enough on 95 of 100 days.
own-enough-now = What is owned is enough: { $owned } would do on 95 of 100 days.
own-never-enough = More sets of this kind alone do not bring 95 good days of 100: something else is short.
own-planned = Checked: { $days } of these days were planned as well, knowing beforehand what comes. { $planner } of them work by a plan, { $policy } without knowing.
own-buy = What else would buy time
own-buy-set = One more set, { $kind }:
own-buy-machine = A second machine like the first:
own-buy-lunch = A lunch longer by { $count } min, with one person at the back:
own-gain = { $days } good days a year more ({ $low } to { $high }), { $clients } clients fewer wait, { $money } a year.
own-no-gain = no gain can be seen.
own-prices = Money a year is what waiting clients cost, less what is paid each day. Assumed: { $waiting } for a client who waits, { $lunch } a day for the lunch, { $days } working days. A set costs { $set } once, a machine { $machine }.
own-assumed = What the days are made of
own-walk-ins = For every 100 visits { $share } clients walk in, and stay if somebody is free soon.
own-no-shows = { $share } of 100 clients do not come.
own-late = { $share } of 100 clients come late, by { $late } min at most.
own-overruns = { $share } of 100 visits take longer, by { $longer } min at most.
own-failed = { $share } of 100 runs have to be done again.
own-wet = { $share } of 100 dried loads come out wet and begin anew.
own-assumption = (assumed)
own-counted = (counted here, out of { $of })
own-begin = Every set is ready when the day begins, a set more than owned as well. Machines that are out are left out.

## What goes in
goes-in-title = What goes in
goes-in-sets = Sets and their pouches
goes-in-sets-how = What one set is made of. One set is what lies in one pouch.
grams = { $grams }
bag-show = Show its pouch
scale-title = A full tray on the kitchen scale
scale-how = Weigh one full tray once, cold and dry. Nobody has to weigh single pieces.
scale-grams = All of it, grams
scale-empty = The tray alone, grams (0 if the scale was set to zero with it)
scale-open = open, without pouches
implements-title = Implements
implements-how = Typical figures until you give your own. Its maker’s word comes first.
implement-add = Add an implement
implement-end = No longer here
implement-word = What you call it
implement-form = Shape
implement-length = Length, mm
implement-width = Width as it lies in the pouch, hinges open, mm
implement-thick = Thickness, mm
implement-mass = Mass of one, grams
implement-material = Made of
implement-is = It is
implement-hinged = hinged
implement-hollow = hollow: a bore or a cavity
implement-single = for one client only
implement-steam = Into steam
implement-ultrasonic = Into the ultrasonic bath
implement-most-c = Stands up to, °C
pouch-sizes-title = Sizes of pouches
pouch-sizes-how = Measure one empty pouch: across, and from the bottom to the fold line.
pouch-size-add = Add a size
pouch-size-end = No longer kept
pouch-size-word = What you call it
pouch-size-width = Across, mm
pouch-size-length = From the bottom to the fold, mm
pouch-size-seam = Width of the seam, mm
pouch-size-fold = Kept free below the fold, mm
pouch-size-mass = Mass of one, grams
inside-title = Chamber, trays, pattern
inside-how = Measure inside, in millimetres. The pattern is the one in the machine’s manual.
inside-chamber = Chamber
chamber-round = round
chamber-box = box
inside-across = Across, mm
inside-high = High, mm
inside-depth = From door to back, mm
tray-name = Tray { $tray }
tray-width = Across, mm
tray-depth = From door to back, mm
tray-height = Free height, mm
tray-mass = Empty, grams
rack-title = Rack
rack-places = Places (0: there is none)
rack-pitch = From one place to the next, mm
rack-height = How high a pouch may stand, mm
inside-pattern = How pouches lie
inside-face = Which side is up
inside-wall = Free to the tray’s edge, mm
inside-between = Free between two pouches, mm
manual-page = Page of the manual
programme-set = Set temperature, °C
programme-hold = Time at temperature, seconds
programme-pulses = Vacuum pulses before
programme-dry-min = Drying, minutes
programme-dry-kpa = Deepest pressure while drying, kPa absolute (empty: no vacuum)
programme-for = Its manual allows
programme-for-pouches = pouches
programme-for-hollow = hollow items
programme-most-pouched = Most in pouches, grams, as the manual says
programme-most-open = Most without pouches, grams, as the manual says
tray-show = Show the trays
refused-no-such-implement = No such implement is kept here.
    .do = Add it first, or leave it out.
refused-implement-in-set = A set of the kind { $kind } is made of it.
    .do = Take it out of that set first.
refused-last-pouch-size = At least one size of pouch stays.
    .do = Add another size first.
refused-tray-lighter = The full tray must weigh more than the empty one.
    .do = Put it on the scale again, cold and dry.
refused-implement-measure = A measure is nothing or more than two metres.
    .do = Measure it as it lies in the pouch, in millimetres.
refused-implement-mass = An implement weighs from a tenth of a gram to 20 kg.
    .do = Weigh it, or keep the typical figure.
refused-implement-heat = The most that it stands is 40 to 300 °C.
    .do = Its maker says which.
refused-inside-measure = A measure is nothing or more than two metres.
    .do = Measure inside, in millimetres.
refused-inside-trays = A machine has one to twelve trays.
    .do = Give at least one tray.
refused-inside-no-rack = On edge needs a rack.
    .do = Say how many places it has, or choose another pattern.
refused-inside-too-large = These trays do not go into this chamber.
    .do = Measure both inside, in millimetres.
refused-pouch-size = This pouch has no face between its seams and its fold.
    .do = Measure an empty pouch, in millimetres.
tray-title = On the trays
tray-print = Print for the machine’s door (A5)
tray-all-in = All go in: { $count }
tray-some-in = { $count } of { $of } go in. More than { $most } cannot.
tray-left = For the next run:
tray-unknown = No pouch is known for this: { $what }
tray-empty = Stays empty.
tray-from-top = Tray { $tray } from the top
tray-mass-is = { $grams } g with the tray.
tray-free = { $free } free to the edge.
tray-desc = On it: { $what }
paper-up = paper side up
film-up = film side up
paper-right = paper to the right
film-right = film to the right
lies-over = lies over by 2.5 cm
fold-free = kept free for the fold
door = door
pattern-flat = flat, one layer
pattern-on-edge = on edge in a rack
pattern-overlapped = overlapped by 2.5 cm
pattern-flat-how = Flat, one layer, nothing on another, nothing at the wall.
pattern-on-edge-how = On edge, one in each place. Nothing leans on the wall.
pattern-overlapped-how = Each over the next by about 2.5 cm: paper to paper, film to film. Common practice; no source was found.
pattern-page = As the machine’s manual says, page { $page }.
pattern-no-page = Set here; the page of the manual is not known.
pattern-typical = A typical room, not yours: look in the machine’s manual and measure.
face-paper = paper
face-film = film
tray-sheet-title = Machine { $machine }: how this load goes in
tray-scale = Scale 1 : { $ratio }
tray-total = All together, without trays: { $grams } g
bag-title = Pouch: { $kind }
bag-size = { $size }, { $width } × { $length }
bag-full = { $full } % of its face is used; 75 % is the most.
bag-picture = How the pieces lie in the pouch
bag-split-metals = More than one pouch: these must not touch each other ({ $metals }).
bag-split-full = More than one pouch: one would be too full.
bag-refused-single = for one client only, to the waste
bag-refused-steam = never into steam
bag-refused-large = too large for every pouch
bag-ask-maker = into steam only if its maker says so
bag-open = Hinges open. Nothing touches another piece.
bag-dry = Washed, dry, looked at, oiled. Wet steel rusts in the pouch.
bag-mark = The mark is seen through the film. Fold on the line, press the air out.
metal-stainless = stainless steel
metal-plated = plated steel
metal-carbon = carbon steel
metal-aluminium = aluminium
metal-carbide = carbide
metal-diamond = diamond
material-stainless-420 = stainless steel, hardened
material-stainless-304 = stainless steel
material-plated-steel = plated steel
material-carbon-steel = plain carbon steel
material-aluminium = aluminium
material-carbide = carbide
material-diamond = diamond
material-ceramic = ceramic
material-glass = glass
material-silicone = silicone
material-polypropylene = plastic
material-fibre = wood, paper, foam
stands-yes = yes
stands-ask-the-maker = only if its maker says so
stands-never = never
form-nippers = nipper
form-scissors = scissors
form-clippers = clipper
form-tweezers = tweezers
form-stick = rod
form-bit = bit
form-block = block or box
form-file = file
implement-cuticle-nipper = cuticle nipper
implement-toenail-nipper = toenail nipper
implement-nail-clipper = nail clipper
implement-toenail-clipper = toenail clipper
implement-cuticle-scissors = cuticle scissors
implement-tweezers = tweezers
implement-pusher = pusher
implement-curette = curette
implement-nail-rasp = nail rasp
implement-foot-file-handle = foot file handle
implement-carbide-bit = carbide bit
implement-diamond-bit = diamond bit
implement-ceramic-bit = ceramic bit
implement-mandrel = mandrel
implement-bit-holder = bit holder
implement-handpiece = e-file handpiece
implement-glass-file = glass file
implement-plastic-brush = brush
implement-sanding-band = sanding band
implement-wood-stick = wood stick
implement-toe-foam = toe foam
implement-paper-file = paper file
implement-buffer = buffer
implement-foot-file-pad = foot file pad
pouch-word-tiny = tiny
pouch-word-small = small
pouch-word-middle = middle
pouch-word-large = large
pouch-word-huge = huge
implement-plated-clipper = plated clipper
implement-rubber-handle-pusher = pusher with rubber handle
chemical-bleach = bleach
chemical-iodine = iodine
chemical-metal-chlorides = metal chlorides
chemical-acid = acid, descaler
chemical-alkali = strong alkali
chemical-acetone = acetone
chemical-alcohol = alcohol
chemical-peroxide = peroxide
chemical-quaternary-ammonium = quaternary ammonium
watch-chemicals = Keep away from: { $what }. If it happened: rinse at once.
watch-single-use = For one client only: to the waste, never washed or bagged.
watch-never-steam = Never into steam.
watch-ask-steam = Into steam only if its maker says so.
watch-never-ultrasonic = Never into the ultrasonic bath.
watch-ask-ultrasonic = Into the ultrasonic bath only if its maker says so.
watch-rusts = Plain steel rusts in steam.
watch-heat = Stands no more than { $celsius }: too little for a cycle at 134 °C.
watch-apart = Apart from other metals: { $metal } only lies with { $metal }.
watch-hinge = Hinge open, in the bath and in the pouch.
watch-hollow = Hollow: needs a machine that draws the air out first.

## Which programme, and will it be dry
propose-line = Proposed: { $cycle }. { $why }
propose-none = No programme of this machine fits this load.
propose-others = Why not the others
propose-unknown = Some sets are not described: their mass is not in the figures.
why-quickest-now = Unwrapped, for use at once: the quickest.
why-quickest-dries = The quickest that stays below its limit for drying.
why-longer-weight = Too heavy for a shorter drying.
why-longer-piece = A heavy piece wants the longest drying.
why-longest-unknown = Nobody knows yet what comes out dry here: the longest drying.
no-drying-pouches = It does not dry, and pouches must be dry.
no-drying-shelf = It does not dry: not for the shelf.
no-too-heavy-maker = Heavier than the maker allows.
no-too-heavy-dry = Heavier than what comes out dry here.
no-too-hot = Hotter than one of the pieces stands.
no-not-for-pouches = Its manual does not say that it is for pouches.
no-not-for-hollow = Its manual does not say that it is for hollow items.
no-gravity-hollow = Hollow, and nobody knows of a vacuum that draws the air out.
no-gravity-times = Without a vacuum, pouches need 30 min at 121 °C or 15 min at 132 °C (CDC 2008).
no-not-in-time = Too late.
change-split = Split it: at most { $grams } g in one run of { $cycle }.
change-unpouched = Or without pouches in { $cycle }, for use at once.
change-take-out = Take out what does not stand the heat of { $cycle }.
change-later = Or wait: { $cycle } takes { $minutes } min.
load-weighs = This load: { $grams } g.
limit-maker-only = { $cycle }: the maker’s limit is { $grams } g. Nobody has looked yet.
limit-maker = { $cycle }: the maker’s limit, { $grams } g, stands. { $count } looks, { $wet } wet.
limit-looks = { $cycle }: about { $grams } g come out dry here ({ $low } to { $high }), from { $count } looks, { $wet } wet.
limit-guess = { $cycle }: nobody knows yet what comes out dry here. Look up the limit in the manual; looks teach the rest.
dry-chance = Chance of a wet load, worked out: { $percent } %.
run-water = Water, worked out: about { $middle } ml ({ $low } to { $high }); a small machine usually takes about 90. Ten such runs: { $ten } litres of the tank.
start-against = Start against the advice. It stays in the log.
start-picture = How it goes on the trays
refused-no-drying = This programme does not dry. Pouches come out wet.
    .safe = Nothing was written.
    .do = Choose one that dries. If it runs already, go back and tick that it starts all the same.
refused-gravity-hollow = Hollow items, and this programme is not known to draw the air out of them.
    .safe = Nothing was written.
    .do = Choose one that its manual allows for hollow items. If it runs already, go back and tick that it starts all the same.
refused-too-heavy = That is heavier than the maker allows ({ $most } g).
    .safe = Nothing was written.
    .do = Take some pouches out. If it runs already, go back and tick that it starts all the same.

## What goes in, more
bag-refused-measure = its measures cannot be

## On the page of the machine
machine-dries = What comes out dry

## On edge
rack-mass-is = { $grams } g with the rack.

## Implements
implement-change = Change

## Air
propose-air-unknown = Nobody said how this machine gets the air out, so it is taken for one without a vacuum.

## Against the advice; what is left
tray-machine-busy = This machine is running. Its load can go in when it is empty.
refused-no-room = Not all of it goes on the trays of this machine.
    .safe = Nothing was written.
    .do = Take some pouches out: the picture shows which. If it runs already, go back and tick that it starts all the same.
refused-piece-inside = This must not go in: { $word }.
    .safe = Nothing was written.
    .do = Take it out of the set. If it runs already, go back and tick that it starts all the same.
refused-too-hot = A piece in it does not stand the heat of this programme.
    .safe = Nothing was written.
    .do = Take it out, or choose a cooler programme. If it runs already, go back and tick that it starts all the same.
refused-not-for-pouches = This programme is not one for pouches.
    .safe = Nothing was written.
    .do = Choose one that its manual allows for pouches. If it runs already, go back and tick that it starts all the same.
refused-below-times = Its time or heat is below the published least.
    .safe = Nothing was written.
    .do = Choose another programme, or look at what was entered for it. If it runs already, go back and tick that it starts all the same.
no-below-times = Its time or heat is below the published least.
refused-unfit = A figure is outside what can be.
    .do = Look at it again: { $why }
refused-not-described = Nobody said what a set of this kind is made of: { $kind }.
    .do = Say it first, above on this page.
refused-weight-odd = That is far from what such sets weigh: about { $grams } g.
    .do = Count the sets and weigh again. If it is right, describe the implements first.
goes-in-nobody-said = nobody said what it is made of
goes-in-pieces-typical = pieces as usual, until you say yours
left-water = Water left on it at the end, worked out: about { $middle } g, at most { $high } g in nineteen of twenty cases.
load-typical = Masses are typical ones: put one full tray on the kitchen scale.
looks-left-out = { $count } looks could not be counted: nobody said what was inside.

## Drying not known
why-drying-unknown = Nobody knows yet what comes out dry here.

## Held bits
form-holder = block that bits stand in
bag-held = In the holder: { $what }

## The strip on every page
not-joined = Not joined to the salon’s box since { $at }. What you see is as it was then.
strip-running = Runs in a machine now
strip-clock = BY CLOCK
strip-clock-usual = BY CLOCK: usually { $low } to { $high } min
strip-measured = MEASURED: { $phase }, { $temperature }.
strip-measured-only = MEASURED: { $temperature }.
strip-held = At temperature so far { $held }.
strip-word = Last word { $seconds } s ago
strip-silent = No word for { $seconds } s.
strip-silent-long = No word for { $minutes } min.
phase-heating-up = heating up
phase-air-out = air out
phase-at-temperature = at temperature
phase-steam-out = steam out
phase-drying = drying
phase-air-in = air in

## The wall
wall-title = On the wall
wall-front-title = On the wall where clients wait
go-wall = Show on a wall
go-wall-front = Show where clients wait
wall-bin = Bin: about { $count }
wall-ends = ends ~{ $at }
wall-runs = runs
wall-short = { $time }: { $count } { $kind } short
wall-free = free
wall-look = look at it
wall-start-now = Start machine { $machine } now
wall-start-at = Start machine { $machine } at { $time }
wall-stop-some = { $count ->
    [one] 1 pouch of machine { $machine }
   *[other] { $count } pouches of machine { $machine }
}

## Upkeep and counter
line-upkeep = Something was done about upkeep.
line-counter = Something was written at the counter.

## Screens that are let in, what is kept while cut off, and two at once
screens-title = Screens
screens-let-in = Let a screen in
screens-how = A phone or tablet is let in once, by a code that stands here for ten minutes.
screens-code = Show a code
screens-new-code = Another code
screens-until = Good until { $at }, for one screen.
screens-square = Square code with the address for the new screen
screens-trust-first = A new phone first opens this address, to trust the box:
screens-type = Scan the square with the new screen, or open this address there and type the code:
screens-only-here = Only this computer reaches the program now. Start it with --secure 0.0.0.0:7443, then other screens can come in.
screens-not-here = Screens are let in and let go at the salon’s box, at a desk, or with the sign of somebody in charge.
screens-known = Screens that are let in
screens-none = None yet. This computer itself needs no code.
screens-since = since
screens-heard = last heard
screens-not-heard = not heard since the program was started
screens-let-go = Let go
screen-phone = Phone
screen-tablet = Tablet
screen-wall = Wall: it only shows
screen-desk = Desk
pair-title = Let this screen in
pair-how = At the salon’s box open Setup, then Screens, and tap “Show a code”. Type its six signs here.
pair-code = Six signs
pair-what = What is this screen?
pair-name = A name for it, if you like
pair-go = Let me in
pair-wrong = That is not the code. Nothing was done. Look at the box and type it again.
pair-void = Too many wrong tries. That code is void now. Ask for another one at the box.
pair-shut = No code is open now. It was used, or its time is over. Ask for one at the box.
pair-go-safe = This address is not secure. First trust the box, then go on at the secure address.
pair-plain = What goes over this address can be read by others on the same network, and this screen keeps no taps when it is cut off. Both are better once the box is started with a secure address.
trust-title = Trust the box
trust-how = How a screen comes to trust it
trust-why = The box made its own certificate. A screen that trusts it has a secure page: the camera works, and taps are kept when it is cut off.
trust-match-title = First compare
trust-match = Trust it only if these signs are the same as on the box’s own screen (Setup, Screens) and as the phone shows them. If they differ, stop and ask who is in charge.
trust-vouches = With it this box can vouch for its own names and for addresses inside the salon, and for nothing else.
trust-fingerprint = Fingerprint (SHA-256)
trust-take = Take the certificate
trust-profile = Phones that load a profile
trust-profile-1 = Open the certificate. The phone says that a profile was loaded.
trust-profile-2 = Open the phone’s settings. The loaded profile stands at the top: install it.
trust-profile-3 = Then look for the certificate trust settings and switch this one on. Without this last step it does not count.
trust-storage = Phones that install from their storage
trust-storage-1 = Take the certificate; the phone stores it.
trust-storage-2 = In the settings search for “certificate” and choose to install a CA certificate.
trust-storage-3 = The phone warns; that is right. Go on only after comparing, and choose the stored file.
trust-computer = Computers
trust-computer-1 = In the browser’s settings search for “certificates”, then authorities, then import.
trust-computer-2 = Choose the file and allow it for web pages only.
trust-then = Afterwards open
trust-back = To take it back, delete the certificate in the same settings.
trust-none = This box was started without a secure address. Start it with --secure 0.0.0.0:7443.
refused-not-here = Screens are let in and let go at the salon’s box, at a desk, or with the sign of somebody in charge.
refused-no-such-screen = That screen was let go already.
refused-nothing-to-see = Nothing at this place of the log needs a second look.
refused-kept-too-long = This was kept here for more than three days and comes too late to be written by itself.
    .do = Tell who is in charge; it can be written later by hand.
kept-title = While the box cannot be reached
kept-about = This screen keeps these pages and the list of pouches. What you tap on them is kept here and sent when the box is back.
kept-nothing-else = Nothing of a client is kept here.
kept-none = The salon’s box cannot be reached, and this page is not kept here. These are:
kept-no-act = The salon’s box cannot be reached, and this cannot be kept here. Nothing was done. Do it again when the box is back.
kept-good = Ready, by the last list
kept-list = The list is from { $at }.
kept-cannot-know = A pouch that was set aside after that cannot be known here.
kept-unknown = This code is not on the list: it was opened before, it is newer than the list, or it is not from here.
kept-used = This one was used here already, or its time is over.
kept-here = Kept here: { $what }
kept-undone = Taken back. Nothing of it is sent.
kept-read = I have read it
kept-waits = { $what }, { $at }: waits for the box
kept-stranger = This screen was let go. What it keeps is safe here and is sent once it is let in again.
kept-count = { $count ->
    [one] I keep your taps here: 1 waiting.
   *[other] I keep your taps here: { $count } waiting.
}
kept-wash = washed
kept-pack = packed; labels come when the box is back
kept-start = machine started
kept-unload = load taken out
kept-look = looked at
kept-set-aside = set aside
kept-open = opened at the chair
kept-apart = taken apart
kept-machine-out = machine out of use
meanwhile-title = Somebody else was there too
meanwhile-opened-title = Opened before we could tell
meanwhile-opened = { $code }: opened { $at }, { $chair }, { $who }.
meanwhile-opened-do = Do not go on with this set. Put it with the used ones, take another, and tell who is in charge.
meanwhile-aside = { $what }: set aside { $at }, { $who }. { $why }. It stays set aside.
meanwhile-twice = { $code } was opened before, { $at }, { $who }.
meanwhile-not-released = { $code } was not released.
meanwhile-released-title = Set aside meanwhile
meanwhile-released = { $what }: released { $at }, { $who }.
meanwhile-released-do = Both are in the log. The safer one holds: do not use these.
meanwhile-unloaded = { $what }: taken out { $at }.
meanwhile-both = Yours was written too.
meanwhile-asks = Seen. Somebody in charge: tap your sign.
meanwhile-nobody = nobody signed
chair-some = a chair
line-station-in = A screen was let in: { $what }.
line-station-out = A screen was let go.
line-seen = Read: entry { $seq }, where two did different things.

## The counter: hand over, correct, from paper, gaps, people
go-hand-over = HAND OVER
hand-over-title = Hand over
hand-over-give = Five lines for whoever comes next
hand-over-alone = One person works here
hand-over-alone-how = There is nothing to hand over. Add a second sign under Machines, signs, sets.
hand-over-1 = 1 Running
hand-over-2 = 2 Waiting
hand-over-3 = 3 Set aside
hand-over-4 = 4 Watch
hand-over-5 = 5 If a machine stops
hand-over-none = Nothing
hand-over-drying = Sets drying on the rack
hand-over-dries = Drying on the rack: { $count }
hand-over-note = Something to watch, if you like
hand-over-to = To one person
hand-over-whoever = whoever takes it
hand-over-asks = I hand over: tap your sign
take-over-asks = I have it: tap your sign
go-take-over = See it and take it
hand-over-from = { $sign } hands over since { $at }.
hand-over-for = To: { $sign }
hand-over-has = { $sign } has it since { $at }.
hand-over-check = To check: { $run }
hand-over-runs = { $run }, pouches: { $count }, too few runs to tell the end
hand-over-runs-until = { $run }, pouches: { $count }, usually ends { $at }
hand-over-jar = Jar { $jar }: change by { $at }
hand-over-not-fine = { $chore }: not fine last time
if-no-machine = No machine is in use: use what is ready, then single-use kits.
if-only-machine = If machine { $machine } stops: set its run aside, use what is ready, then single-use kits.
if-machine-stops = If machine { $machine } stops: set its run aside, bag again, use machine { $other }.
nobody-has-it = Nobody has the back
line-handed-over = Handed over to { $sign }. Drying on the rack: { $count }.
line-taken-over = Took it over: I have it.
refused-alone = Only one person works here: there is nobody to hand over to.
refused-note-long = A note has { $most } characters at most.
refused-taken-already = Somebody has it already.
    .do = See the log for who took it.
refused-not-offered = This is not the hand-over that was offered last.
    .do = Open the page HAND OVER again.
correct-title = Correct an entry
correct-key = Correct
correct-was = As it was written
correct-is = As it was in truth
correct-stays = The old entry stays in the log, struck through, with yours beside it.
correct-asks = So it was: tap your sign
correct-chair = Chair
correct-inside = In the run: take the tick from those that were not in it
correct-too = Waiting for a run: tick those that were in it too
correct-programme = The programme is not corrected here: the record of the machine says what ran. In doubt, set the run aside.
log-corrected = Corrected { $at }, { $sign }: { $what }
line-correction = Correction: { $what }
line-run-corrected = { $run }: what was inside was corrected.
line-run-out = Not in it: { $what }.
line-run-put = In it too: { $what }.
refused-not-correctable = This entry is not corrected here.
    .do = If something must not be used, set it aside. If a number is wrong, count again.
refused-nothing-corrected = Nothing was changed in it.
    .do = Change what was wrong, then tap your sign.
refused-correct-counts = These sets were counted or packed since, so the old entry cannot be corrected.
    .do = Count the sets now and write it under Machines, signs, sets.
refused-correct-opened = More was written about this pouch since, so the opening cannot be corrected.
    .do = If it must not be used, set it aside.
refused-correct-gone = Pouch { $code } was released, opened or set aside already: it stays in its run, so that a recall reaches it.
    .do = Set it aside if it was not in the run.
refused-correct-failed = This run missed its numbers: pouch { $code } is not taken out of it.
    .do = Open it, wash again, new pouch, new run.
refused-correct-harder = What you put in is harder for steam than what the run was judged for.
    .do = Run it again in a pouch of its own.
refused-future = That time is still to come. Nobody can have seen it.
    .do = Enter the day and the time as they were, not later than now.
refused-end-before-start = It ends before it begins.
    .do = Look at both times. A run over midnight needs its own day for the end.
refused-later-machine-full = Machine { $machine } has a run in it now, so a run from paper has to wait.
    .do = Write it in when the load is out.
refused-look-before-out = At that time the load was still in the machine.
    .do = Look at the time on the paper again.
later-title = From paper
later-how = In the order of the weekly sheet. Put in the day and the time as they stand on the paper.
later-day = Day
later-time = Time
later-start = Started at
later-end = Ended at
later-asks = As on the paper: tap your sign
later-wash = Washed
later-run = A run
later-look = Numbers and looks of a run
later-open = Opened at a chair
later-chore = A chore done
later-closed = Closed that day
later-machine = Machine
later-inside = Pouches in it
later-packed = Packed on paper
later-packed-how = Pouches that this log does not know yet get a code now: write it on them.
later-kind = What kind of set
later-no-look = No load waits for its looks.
later-look-how = What the paper says. A no on the paper is a no here.
later-all-turned = All turned
later-all-dry = All dry and whole
later-inner-yes = Yes, end point reached
later-which = Which one not
later-code = The four symbols on the pouch
later-which-chore = Which chore
later-found = Found
later-fine = Fine
later-not-fine = Not fine
log-print = To print
gap-nothing-written = Nothing is written from { $from } to { $to }.
gap-asks = Why? One tap. It stays visible with its reason.
gap-closed = Closed
gap-holiday = Holiday
gap-power = No power
gap-nothing = Nothing to do
gap-paper = On paper
gap-forgotten = Forgotten
line-gap = Nothing written from { $from } to { $to }: { $why }.
line-box-off = The salon's box was off from { $from } to { $to }.
outage = Power was lost { $from } to { $to }.
outage-do = Machine { $machine } must show complete; if not, run again. The run is set aside until its numbers are there and a named person lifts that.
line-counted-back = { $run }: counted back, { $count }.
line-no-code = A pouch without a code was opened: { $kind }.
line-no-code-chair = A pouch without a code was opened at chair { $chair }: { $kind }.
line-exposure = Contact with blood was noted.
line-exposure-chair = Contact with blood was noted at chair { $chair }.
line-speaks = { $sign } reads { $language }.
line-person-is = { $sign }: { $what }.
line-record-shows = The record is written in { $language }, { $units }.
role-learns = learns
role-charge = in charge of machines and stops
role-teaches = teaches
role-none = nothing particular
units-metric = °C, kPa, mm, g
units-us = °F, psi, in, oz
person-is = Language and role
person-reads = Reads
person-reads-any = as the screen shows
person-roles = Here this person
person-is-do = Keep it
record-title = How the record is written
record-how = For prints: log, labels, tray sheet, weekly sheet. Each screen keeps its own language.
record-language = Language of the record
record-units = Units
record-do = Keep it
shelf-aside = Set aside { $code }: not sure
wipe-glass = Wipe glass
wipe-says = Wipe now. Touches do nothing.
week-title = Weekly sheet
week-how = Print it and hang it on the wall: it works without electricity. A box: due that day. Copy it in later from this page.
week-water = water + drain
week-seal = door seal wiped
week-washed = washed: sets, time, sign
week-run = run { $run }
week-spore = spores machine { $machine }: placed, result
week-jar-a = jar A mixed
week-jar-b = jar B mixed
week-bath = ultrasonic water changed
week-foil = foil test (month)
week-retired = retired, away
week-odd = late or odd
week-back = who had the back
week-marks = Tick: yes. Cross: no, then DO NOT USE.

## The shelf and the sheet
shelf-not-sure = Not sure of one? Tap its code: set aside.
week-run-first = run { $run }: cycle, from–to, marks, dry, who

## Practice
cards-title = Cards
cards-how = Nothing here is real. Deal a card, do what it asks on the other pages, then end it.
cards-clock = The clock
cards-clock-shows = It shows { $at }, speed × { $times }.
cards-clock-how = Another speed never makes it jump. Undo stays 30 real seconds.
cards-times = × { $times }
cards-later = Next half hour
cards-everyone = all
cards-dealt = Dealt
cards-asked = What is asked (for the teacher)
cards-end = End this card
cards-deal = Deal a card
cards-learner = To whom
cards-ended = Cards that ended
cards-all-of = All sheets of { $sign }
cards-score = { $right } of { $asked } right
sheet-title = Answer sheet
sheet-print = Print the sheet
sheet-name = Name:
sheet-sign = Sign:
sheet-ended = Ended
sheet-acts = What was done, in order
sheet-nothing = Nothing was done.
sheet-steps = What was asked
sheet-open = This card is still open. End it to see which steps were right.
sheet-teacher = Teacher, date:
step-right = Right
step-wrong = Wrong
card-good-load = A good load
    .read = Take used sets from the bin to the shelf: wash, bag, start machine 1, wait, look, release.
card-wet = A wet pouch
    .read = The load of machine { $machine } is out. Pouch { $code } is wet. The others are dry, whole, and their marks turned.
card-two-wet = Two wet pouches
    .read = The load of machine { $machine } is out. Pouches { $code } and { $other } are wet. All marks turned.
card-mark = A mark did not turn
    .read = The load of machine { $machine } is out. The mark of pouch { $code } did not turn. All are dry and whole.
card-torn = Torn and dropped
    .read = The load of machine { $machine } is out. Pouch { $code } is torn, pouch { $other } fell on the floor. The others are good.
card-power = A power cut
    .read = The power went off while machine { $machine } ran. It is back; the machine has stopped.
card-spore = A failed spore test
    .read = The spore test of machine { $machine } can be read: spores grew, and the control grew too. Do what this day asks.
card-wrong-pouch = The wrong pouch
    .read = A client sits at chair 3. You have pouch { $code } in your hand. Look it up before you open it.
card-fast = The fast cycle
    .read = Set { $code } went through the fast cycle without a pouch, for use at once. Its mark turned. A client waits at chair 2.
card-cannot-tell = Cannot tell
    .read = The record of machine { $machine } has a hole. The display says: lowest { $lowest } °C, { $held } minutes, { $kpa } kPa absolute. The mark inside reached its end.
card-too-many = Too many pouches
    .read = Fourteen pouches are bagged. Start machine 1 with as many as belong in it.
card-foot-bath = A foot basin
    .read = A client has left foot basin 1. Make it ready for the next one.
step-washed = Washed before it was bagged
    .why = Steam does not get through dirt. Say that it is washed, then bag.
step-bagged = Bagged before it was started
    .why = Only what is in a pouch stays clean on the shelf.
step-drying = A programme that dries
    .why = Pouches that come out wet are not used. The fast programme does not dry.
step-not-early = The door stayed shut until the run was over
    .why = A door that is opened early ends the run. What is inside cannot be used.
step-all-looked = All marks and all pouches were looked at
    .why = The numbers do not see a wet or torn pouch. Only looking tells.
step-released = The good load was released
    .why = Until a person releases it, nothing may be opened.
step-wet-said = The wet pouch, and no other, was said to be wet
    .why = The first answer stands: dry later is still wet.
step-others-again = The others were looked at again and released
    .why = One wet pouch reaches itself. Look at all the others again before they go on the shelf.
step-not-used = What failed was set aside and not used
    .why = A wet, torn or dropped pouch is never used.
step-apart = Its set goes back to washing, in a new pouch
    .why = Take it apart: a pouch is never used twice.
step-two-wet-said = Both wet pouches were said to be wet
    .why = Say every one in the first answer. Two wet pouches reach the whole load.
step-none-released = Nothing of the load was used
    .why = Two wet, a mark, or missed numbers: the whole load must not be used.
step-all-apart = All of it goes back: wash, new pouch, new run
    .why = There is no talking back. Take every pouch apart and begin again.
step-mark-said = The mark that did not turn was said
    .why = Look at every mark. One that did not turn speaks for the whole load.
step-torn-said = Both pouches were named, and no other
    .why = What is torn or was on the floor is open to dirt. Name each one.
step-others-released = The others were released
    .why = Torn or dropped reaches that pouch alone. The others may be used.
step-power-aside = The whole load was set aside
    .why = A run that stopped has proved nothing. Set all of it aside.
step-spore-read = The test was read as it is: spores grew
    .why = One reading in which spores grew stands, whatever a second look says.
step-machine-out = The machine was taken out of use
    .why = First of all the machine: nobody may start it.
step-shelf-frozen = What the machine had made was set aside
    .why = From the run after the last good test on, nothing of this machine is used.
step-nothing-opened = Nothing of it was opened
    .why = What was opened since has touched a client: it becomes a visit to be found.
step-stays-out = The machine stayed out
    .why = It comes back only after a good repeat test.
step-another-opened = Another pouch was opened
    .why = A pouch that must not be used stays shut; take the nearest good one.
step-code-read = Its code was read
    .why = Without the code nobody finds the visit again.
step-stop-stands = The stop stayed
    .why = A failed mark or look is never lifted.
step-use-now = Looked at and released for use now
    .why = Without a pouch it is for use now, with a time, after a look like any other.
step-in-time = Opened before its time was up
    .why = After its time it is used again: wash it.
step-read-or-again = The display was read as it stands, or the load runs again
    .why = Three numbers, each as the display says it. In doubt run again.
step-not-on-looks = Not released on marks and looks alone
    .why = Cannot tell is not a yes. Read first, or run again.
step-inner-mark = The mark inside the load was looked at
    .why = Numbers that a person read want a mark inside as well.
step-tested-most = No more than the tested most
    .why = A fuller tray was never tested: steam may not reach all. Leave the rest for the next run.
step-bath-wet = Drained, cleaned, rinsed and wet with disinfectant after the client
    .why = After each client. A liner does not replace it.
step-bath-time = Drained after the whole time on the label
    .why = It has to stay wet for as long as the label says.
practice-title = Practice book
practice-what = A made-up salon for teaching, with cards and a clock that runs faster. It has its own book: nothing done there reaches this one.
practice-open = The practice book is open
practice-go = Go to the practice book
practice-closed = The practice book is closed
practice-nobody = Only who teaches opens it, and nobody here is said to teach. Who teaches is said in Setup.
practice-asks = You teach and open the practice book: tap your sign
refused-not-teacher = The practice book is opened by a person who teaches.
refused-not-practice = Only a practice book has this. A salon's own clock runs as it is, and no card is dealt in it.
refused-practice-times = The practice clock runs 1 to { $most } times as fast.
refused-practice-closed = The practice book could not be opened: { $why }.
refused-card-machine = A run is still in the machine that this card needs. Take its load out first, or put the machine back into use.
refused-no-such-card = There is no open card like this. It may have ended already.
line-practice-clock = The practice clock was set: { $at }, speed × { $times }.
line-card-dealt = Card dealt to { $sign }: { $card }.
line-card-ended = Card ended: { $right } of { $asked } right.

## Spore tests and the way on after a failed one
spores-title = Spore tests
spores-prove = A good test speaks for its run, and for no other. A test without a control that grew says nothing.
spores-told = Answered
spores-placed = Placed { $at }.
spores-by = Posted. Answer expected by { $day }.
spores-grew = Turned: spores grew. Stop the machine.
spores-control = And the control?
spores-control-grew = Control turned
spores-control-same = Control did not turn
spores-control-none = No control
spores-same-asks = Same as before, no growth: sign here
spores-more = Posted, or lost
spores-days = Answer in how many days?
spores-post-asks = Posted: sign here
spores-lost = Lost, broken or mixed up
spores-good-last = Last good test: { $day }.
spores-good-none = No good test is in this book yet.
spores-has-control = A control of the same lot lies beside it
spores-lot = Lot and use-by date on the box
spores-place-asks = Test placed: sign here
spores-run = It went through
spores-run-none = No run of these
spores-says-waiting = No answer yet
spores-says-good = No spores grew, the control did
spores-says-grew = Spores grew
spores-says-nothing = Says nothing: no control, or lost
spores-test-of = Spore test, { $what }
spore-path = What to do now
spore-single-use = Single-use kits: count them now. They carry the rest of the day.
spore-lawful = Another way that the local rule allows? Ask before you use it.
spore-step-out = Machine out of use, a sign on its door.
spore-step-freeze = Shelf frozen: what this machine did since the last good test is set aside.
spore-step-repeat = Test again at once, same cycle, loaded right.
spore-wait = The repeat is placed. Wait for its answer.
spore-start = Run with the test alone
spore-start-how = Nothing for a client goes in. Use the same cycle. Read the machine’s manual first.
spore-start-asks = Door shut, test inside: sign to start
spore-step-look = Look at all numbers and marks since the last good test; ask everybody how they packed and loaded.
spore-step-back = Repeat good and all else good: back in use. Repeat bad: repair, then three good tests in a row.
spore-back = Machine back in use
spore-back-how = Only if all numbers and marks since the last good test were right. What the freeze held may be used again; what was wet, torn or missed stays set aside.
spore-back-asks = I looked at all of them: sign here
spore-back-at = Back since { $at }.
spore-step-letters = Letters wait: for a bad repeat, the local rule, or the health authority.
spore-letters-asked = Our rule counts any growth, or the health authority asked
letter-title = Letter
letter-write = Write
letter-closed = Letters are not open. They wait for a repeat that failed, for the local rule, or for the health authority.
letter-date = { $day }
letter-what = A routine test of one of our machines failed. Tools from that machine may have been used at your visit.
letter-visit = Your visit: { $at }.
letter-span = It is about visits from { $from } to { $to }.
letter-nobody = Nothing was opened for a client. No letter is needed.
letter-risk = What is known about the risk, and what is not (words of the health authority):
letter-do = What to do, by when, and whether it is free:
letter-ring = Whom to call, in which languages:
letter-changed = What we have changed:
letter-sorry = We are sorry.
line-spore-placed = Spore test placed in { $what }, with a control.
line-spore-placed-alone = Spore test placed in { $what }, without a control.
line-spore-posted = Spore test posted, answer by { $day }.
line-spore-grew = Spore test read: spores grew.
line-spore-good = Spore test read: no growth, the control grew.
line-spore-control = Spore test read: no growth, and the control did not grow. It says nothing.
line-spore-alone = Spore test read: no growth, no control. It says nothing.
line-spore-lost = Spore test lost, broken or mixed up.
line-unfrozen = The freeze ended: { $what } may be used again.
line-serviced = { $machine } serviced.
line-repaired = { $machine } repaired.
line-validated = { $machine } validated or calibrated.
line-moved = { $machine } moved.
refused-no-such-test = That spore test is not in this book.
refused-test-not-failed = No spores grew in that test.
refused-repeat-not-good = The repeat is not good yet. The machine stays out of use.
    .do = Test again, wait for the answer, and read it with its control.
refused-which-control = Nobody said what the control did. Nothing was written.
    .do = Go back and say whether the control turned.
refused-answer-days = An answer is waited for 1 to { $most } days.
spores-size = { $count ->
    [one] If spores grew today, { $count } visit would have to be found.
   *[other] If spores grew today, { $count } visits would have to be found.
}
spores-late = { $count ->
    [one] { $count } answer is late. Ask the laboratory.
   *[other] { $count } answers are late. Ask the laboratory.
}
spore-usable = { $count ->
    [one] { $count } ready set may be used
   *[other] { $count } ready sets may be used
}
spore-frozen = { $count ->
    [one] { $count } pouch frozen
   *[other] { $count } pouches frozen
}
spore-visits = { $count ->
    [one] { $count } visit reached
   *[other] { $count } visits reached
}
spore-stays = { $count ->
    [one] The repeat failed. Out of use until repaired; { $count } good test in a row is missing.
   *[other] The repeat failed. Out of use until repaired; { $count } good tests in a row are missing.
}
letter-count = { $count ->
    [one] { $count } visit is reached. One letter each, all sent in one go.
   *[other] { $count } visits are reached. One letter each, all sent in one go.
}
first-machines = { $count ->
    [one] One machine
   *[other] { $count } machines
}

## The first minute
first-machine = How many machines are here?
first-title = First minute
first-running = Machine 1 runs now?
first-sign = Pick a sign. It is yours from now on; initials can come later.
first-asks = Door shut, running: tap your sign, the clock starts
first-asks-sign = Only my sign
first-not-running = Nothing runs yet
first-signs = leaf, star, fish, moon, wave, tree, bird, key
refused-not-empty = This book is not empty any more. Nothing was written.
    .do = Go to NOW; machines and signs are added in Setup.

## Hot after the run
hot-until = HOT until { $at }
hot-then = Then look at every pouch and release.
hot-cool = Cool enough to touch already? Look now

## Shapes and words
legend-title = Shapes and words
legend-how = Every state has its own shape and its own word. Colour only repeats them.
legend-states = Where a set is
legend-records = What the record of a run says
legend-fine = All is well
legend-fine-how = Light card, thin line: nothing to do, or only to know.
legend-turn = Your turn
legend-turn-how = Light card with a thick bar: somebody is waited for.
legend-stop = Stop
legend-stop-how = Dark card with an inner line: hands off, whatever it looks like.

## Counting back
look-count = How many pouches do you count?
refused-count-first = Count the pouches of this run first. Nothing was released.
    .do = Go back, type how many you count, then sign.
refused-count-again = That is not how many there should be. Nothing was released.
    .do = Count again, at the machine.

## Counted on paper
later-counted = Pouches counted, where the paper has it

## Upkeep
place-upkeep = UPKEEP
upkeep-title = Upkeep
upkeep-all = All upkeep
upkeep-set-title = Upkeep: settings
caution-liquids = Never mix two products. Open a window. The label comes first.
about-salon = The salon
thing-jar = Jar { $number }
thing-basin = Foot basin { $number }
thing-bath = Ultrasonic bath { $number }
thing-gone = (not here)
chore-of = { $about }: { $chore }
chores-now = Chores due
chores-soon = Chores due: { $count }
chores-more = and { $count } more
chores-none = No chore is due now.
chores-later = Later today
chores-counted = Counted by runs, or not known
chores-quiet = Done today, and what comes next
chores-today = Today
chores-next = Next
chores-watch = Not fine: somebody has to see to it
chore-asks = Done? Tap your sign.
chore-not-fine = Found not fine
chore-found = Found not fine: { $done }
chore-closed = Closed today
chore-not-used = Not used today
chore-stops = No start until it is done and found fine. Nobody can skip it.
due-now = Due now
due-late = Late since { $day }
due-later = Due today at { $time }
due-done = Done { $done }
due-done-today = done today
due-left = Left out today
due-next = Next by { $day }
due-runs = { $runs } of { $most } runs
due-runs-over = Late. Runs too many: { $count }
due-not-known = Not known how often: look in the manual
often-day = every day
often-days = every { $count } days
often-runs = after { $count } runs
source-own = How often: your salon says so.
source-page = How often: the manual, page { $page }.
source-common = How often: common practice, no source.
source-dental = How often: a dental guideline, CDC 2003. Your place may ask for another.
source-foil = How often: a dental trade paper.
source-nsw = How often: New South Wales, 2022. Your place may ask for another.
source-manual = Only the machine’s manual knows.
how-water = Distilled water only. Level and drain.
how-seal = Wipe with a damp cloth, no bleach. Any cut?
how-chamber = Chamber, trays and rack. No abrasive pad.
how-tank = Drain, flush, fill with distilled water.
how-bin = Empty and clean it. Gloves.
how-last-load = Nothing stays in overnight: it gets wet and rusts.
how-bath = Fresh solution, not above 45 °C (113 °F). Let it degas.
how-foil = Foil upright, 30 s. A bare patch over 1.3 cm (1/2 in): not fine.
how-stock = Count what is used up. Look at the dates.
basins-title = Foot basins
basin-waits = Foot clients gone, basin not cleaned yet: { $count }
basin-how = Drain. Clean with soap. Rinse. Fill, disinfect, pumps on. Then sign: the wet time begins.
basin-liner = A liner does not replace cleaning.
basin-wet-until = wet until { $time }
basin-not-yet = Do not drain before.
basin-drain-now = drain now, wet long enough since { $time }
basin-clean-since = Drained and dry: { $time }
basin-again = Begin the wet time again
basin-after = After what?
basin-after-client = a client
basin-after-day = day’s end
basin-after-week = weekly cleaning
basin-wet-asks = Clean and full? Tap your sign: { $count } min begin.
basin-drain-asks = Drained and dry? Tap your sign.
basin-day-end = clean at day’s end
basin-week = weekly cleaning
basin-not-used-today = not used today
basin-label-own = { $count } min wet, by your label.
basin-label-typical = { $count } min wet: typical (EPA). Your label comes first.
jars-title = Jars
jar-under = Stay under until { $time }
jar-out = Under long enough since { $time }. Take out, rinse, dry.
jar-empty = Empty. Mix fresh.
jar-not-known = How long the mix lasts: not known. Read the label.
jar-good = Mix good until { $time }
jar-past = Past its time since { $time }. Empty, rinse, mix fresh.
jar-contact = { $count } min fully under, by the label.
jar-contact-not-known = Minutes under: not known. Read the label.
jar-again = Each new piece starts the time again.
jar-change = Change the mix
jar-cloudy = Cloudy? Change it now.
jar-in-asks = Something went in? Tap your sign.
jar-mixed-asks = Emptied, rinsed, mixed fresh? Tap your sign.
jar-emptied-asks = Emptied and rinsed? Tap your sign.
jar-lasts-day = to the end of the day
jar-lasts-hours = { $count } hours
stock-title = Shopping
stock-enough = Nothing to buy now.
stock-rest = Enough of these: { $count }
stock-left = About { $count } left, counted { $day }.
stock-left-counted = { $count } at the last count, { $day }.
stock-not-counted = Not counted yet.
stock-buy = Buy: fewer than { $count }.
stock-bought = Bought
stock-counted = Counted
spore-title = Spore tests
spore-line = { $about }: last good { $good }. { $due }
spore-never = none yet
spore-go = To the spore tests
set-things = Jars, foot basins, baths
add-jar = One more jar
add-basin = One more foot basin
add-bath = One more ultrasonic bath
set-keep = Keep this
set-wet = Minutes wet, from the label
set-contact = Minutes fully under, from the label
set-lasts = Hours that a mix lasts (empty: to the end of the day)
set-label = Name, number, strength, as on the label
set-thing-ended = It is here no longer
set-chores = How often
set-chores-how = By days, by runs, or both: whichever comes first. Leave empty what nobody knows.
set-chore-own = A chore of our own
set-chore-word = What, in small letters
set-about = For what
set-days = At the latest after so many days
set-runs = At the latest after so many runs
set-part = When in the day
part-opening = before the first client
part-closing = after the last client
part-any = any time
set-page = Page of the manual
set-stops = No start while it is late
set-chore-ended = Not done here
set-stock-add = Keep something more
set-stock-word = What, in small letters
set-used-by = What uses it up
used-by-counting = only a count tells
used-by-pouch = one for each pouch
used-by-run = one for each run
used-by-test = one for each spore test
set-least = Buy when there are fewer than
set-stock-ended = Not kept any more
wall-drain = Drain foot basin { $number } now
wall-jar = Change jar { $number } now
wall-upkeep = UPKEEP { $count }
line-thing = { $what } is here.
line-thing-ended = { $what } is here no longer.
line-jar-set = { $what }: { $count } min under, a mix lasts { $lasts }.
line-jar-mixed = { $what }: emptied, rinsed, mixed fresh.
line-jar-in = { $what }: something went in.
line-jar-emptied = { $what }: emptied and rinsed.
line-basin-set = { $what }: { $count } min wet, by the label.
line-basin-wet = { $what }: cleaned and wet. After: { $after }.
line-basin-drained = { $what }: drained and dry.
line-not-used = { $what }: not used today.
line-chore-set = { $chore }: { $often }.
line-chore-ended = Not done here: { $chore }.
line-chore-done = Done: { $chore }.
line-chore-not-fine = Done, found not fine: { $chore }.
line-chore-closed = Left out, salon closed: { $chore }.
line-chore-not-used = Left out, not used: { $chore }.
line-stock-set = { $what }: buy when there are fewer than { $count }.
line-stock-ended = Not kept any more: { $what }.
line-stock-counted = Counted: { $count } { $what }.
line-stock-bought = Bought: { $count } { $what }.
chore-word-water-level = water level
chore-word-door-seal = door seal
chore-word-chamber = chamber and trays
chore-word-tank = tank flushed
chore-word-spore-test = spore test
chore-word-bacteria-filter = air filter
chore-word-dust-filter = dust filter
chore-word-door-seal-change = new door seal
chore-word-validation = validation
chore-word-used-bin = used bin
chore-word-last-load = last load out
chore-word-stock-count = stock count
chore-word-sharpness = sharp or dull
chore-word-eyewash = eyewash and first aid
chore-word-bath-fresh = fresh solution
chore-word-bath-drained = drained and wiped
chore-word-foil-test = foil test
stock-word-pouches = pouches
stock-word-marks = marks
stock-word-spore-tests = spore tests
stock-word-distilled-water = distilled water
stock-word-oil = oil
stock-word-brushes = brushes
stock-word-gloves = gloves
stock-word-detergent = detergent
stock-word-disinfectant = disinfectant
refused-no-such-thing = That jar, basin or bath is not in this book.
refused-jar-empty = Jar { $number } is empty.
    .do = Mix fresh first, and sign for it.
refused-jar-past = The mix in jar { $number } is past its time.
    .safe = Nothing was written. What is in it is not disinfected.
    .do = Empty, rinse, mix fresh. Then put things in.
refused-basin-wet = Foot basin { $number } stays wet until { $until }.
    .safe = Nothing was written. The minutes on the label are not over.
    .do = Wait until then. Drained already? Fill it again and begin the wet time again.
refused-basin-dry = Foot basin { $number } is not wet: there is nothing to drain.
refused-basin-used = Foot basin { $number } was cleaned today, so it was used.
    .do = Clean it at day’s end as well.
refused-no-such-chore = That chore is not done here.
refused-chore-due = The machine may not be started: { $chore } is late.
    .safe = Nothing was started. The pouches are bagged still.
    .do = Do it, find it fine, sign for it under UPKEEP. Or use another machine.
refused-chore-stops = { $chore } stops work, so it is not left out.
refused-chore-stopped = { $chore } has stopped work: do it first.
    .do = Was the figure wrong? Enter it with the page of the manual.
refused-stops-machine = Only a chore of a machine can stop work.
refused-stops-how-often = What stops work needs a number of days or runs.
refused-spore-placed = A spore test is placed, not signed for.
    .do = Go to the spore tests and place one.
refused-no-such-stock = That is not kept in stock here.


## The record, shown
show-title = Show the record
show-how = One page to read, for somebody who asks to see the record. Nothing on it can be changed, and it leads nowhere else. It holds no names of clients.
show-back = The browser's Back key leads from that page back to here.
show-do = Show it now
show-open = Open to read now
show-address = Until { $at }:
show-close = Close all of them now
folder-title = The record of this salon
folder-until = Read only until { $at }
folder-over-title = This page is closed
folder-over = Its time is over, or nobody has opened it. It was only for reading, and nothing was changed. Ask somebody who works here to show the record again.
folder-languages = Language of this page
folder-span = From { $from } to { $to }
folder-printed = Printed as of { $at }
folder-page = Page
folder-of = of
folder-book-salon = A salon's own book
folder-period = Choose the time
folder-days-30 = Last 30 days
folder-days-90 = Last 90 days
folder-year = This year
folder-from = From day
folder-to = To day
folder-choose = Show this time
folder-unread = These days could not be read. The last 30 days are shown.
folder-parts = Parts of this page
folder-none = Nothing about this is kept in this book yet. Ask for the paper.
folder-none-span = Nothing about this was written in the time shown.
folder-part-0 = This salon today
folder-part-1 = Who works here, and who may run a machine
folder-part-2 = The rule that is followed, and settings
folder-part-3 = Runs
folder-part-4 = Spore tests
folder-part-5 = Set aside, and what became of it; recalls
folder-part-6 = Disinfectant
folder-part-7 = Ultrasonic bath
folder-part-8 = The machines
folder-part-9 = Foot basins
folder-part-10 = Training and people's safety
folder-part-11 = Gaps, and why
folder-part-12 = Safety sheets, waste, single use
folder-part-13 = How to read this
folder-machine-in = in use
folder-machine-out = OUT OF USE since { $at }
folder-aside-none = Nothing is set aside now.
folder-sign = Sign
folder-is = What was said of the person
folder-in-charge = in charge of the machines
folder-learns = learns: another person looks as well
folder-teaches = teaches
folder-no-role = nothing was said
folder-who = Only the signs that people chose stand here. For names and licences, ask to see the display copies.
folder-who-runs = Nobody was named in this book as being in charge of the machines. Ask.
folder-rule = Name and section of the rule, and the day on which it was read, are not kept in this book. Ask for the paper.
folder-retention = How long the record is kept: not set. No entry can be changed or deleted without its being seen.
folder-interval = Time from one spore test to the next: not set.
folder-interval-days = Time from one spore test to the next, { $machine }: { $days } days at most.
folder-limits = Limits by which a run is judged
folder-limits-own = The stricter of these and the machine's own settings counts. What and where from stand as they were written, in English.
folder-col-what = What
folder-col-value = Value
folder-col-source = Where from
folder-col-how = How known
folder-limit-seen = read in that source
folder-limit-memory = remembered, to be checked
folder-limit-ours = a rule of this program
folder-col-day = Day
folder-col-run = Run
folder-col-end = Out
folder-col-programme = Programme
folder-col-inside = Inside
folder-col-steam = Steam
folder-col-known = Known by
folder-col-looks = Marks; dry and whole
folder-col-signs = Signs
folder-col-notes = Marked
folder-col-by = By
folder-col-why = Why
folder-col-became = What became of it
folder-col-in = In
folder-col-result = Result
folder-col-done = What was done
folder-col-chore = Chore
folder-col-found = Found
folder-col-after = After
folder-col-drained = Drained
folder-col-last = Last done here
folder-not-out = not out yet
folder-marks-all = marks all turned
folder-marks-none = marks not looked at
folder-dry-all = all dry and whole
folder-dry-none = dryness not looked at
folder-dry-bad = { $wet } wet, { $torn } torn, { $dropped } dropped
folder-inner-bad = the indicator inside did not reach its end point
folder-not-looked = nobody has looked yet
folder-signed-start = started { $sign }
folder-signed-look = looked { $sign }
folder-signed-release = released { $sign }
folder-no-sign = no sign
folder-corrected = corrected
folder-differ = two entries differ
folder-aside-why = DO NOT USE. { $why }
folder-lot-none = lot not kept
folder-jar-contact = { $label }: things stay under for { $minutes } min.
folder-jar-hours = A mix lasts { $hours } h.
folder-jar-day = A mix lasts to the end of the day.
folder-jar-no-label = label not kept
folder-jar-unset = What its label asks was not said.
folder-mixed = mixed anew
folder-emptied = emptied and rinsed
folder-fine = as it should be
folder-not-fine = NOT as it should be
folder-left-closed = left out: the salon was closed
folder-left-unused = left out: not used
folder-machine-paper = Model, serial number, manual and certificates are not kept in this book. Ask for the paper.
folder-services-none = No service was written down.
folder-due-runs = { $chore }: after { $runs } runs at the latest, { $since } since it was last done.
folder-after-client = a client
folder-after-day = the end of the day
folder-after-week = the week
folder-not-used = not used that day
folder-not-drained = not noted
folder-training = Training, yearly refreshers and offers of vaccination are not kept in this book. Ask for the paper.
folder-exposure = Contact with blood was noted. What was done about it is kept apart, out of respect for the person.
folder-gap-closed = the salon was closed
folder-gap-holiday = holiday
folder-gap-power = no power
folder-gap-nothing = open, nothing to do here
folder-gap-paper = kept on paper
folder-gap-forgotten = forgotten
folder-gap-box = the salon's computer was off
folder-gap-none = No gap was explained in the time shown. That does not say that there was none: look for days without a line in part 3.
folder-sheets = Safety data sheets, how waste leaves the salon and what is used once only are not kept in this book. Ask to see the sheets, the bin and the single-use stock.
folder-read-measured = Measured: taken from the file that the machine wrote itself. The file is kept as it came.
folder-read-read = Read off the display: a person typed three numbers from the machine.
folder-read-clock = By the clock: only start and end are known, and nothing about the steam.
folder-read-paper = From paper: copied in from a sheet that was filled in by hand.
folder-read-later = Written later: more than five minutes lie between the happening and the writing. Both times are kept.
folder-read-corrected = Corrected or struck through: the first entry stays, with the later one beside it.
folder-read-steam = That steam did its work says that the record carries it for what was said to be inside. It does not say that pouches were dry: only a look does.
folder-read-chain = Each line is tied to the one before it. Whether the whole log is as it was written can be checked at the salon's computer.
folder-show-title = Ask us to show you
folder-show-how = Anybody who works here can show these six steps.
folder-show-1 = Put a clean, dry set into a pouch and label it
folder-show-2 = Load a tray, choose the programme, start
folder-show-3 = Look at numbers, marks and pouches, and say what happens if one is not right
folder-show-4 = Check a pouch at the chair before opening it
folder-show-5 = Mix the disinfectant and date the jar
folder-show-6 = Clean a foot basin and keep it wet for the label's time
folder-show-never = not in this book
folder-col-lot = Lot and use by
show-minutes = { $count ->
    [one] It closes itself after { $count } minute.
   *[other] It closes itself after { $count } minutes.
}
folder-aside-now = { $count ->
    [one] { $count } pouch must not be used now.
   *[other] { $count } pouches must not be used now.
}
folder-runs-count = { $count ->
    [one] { $count } run in the time shown.
   *[other] { $count } runs in the time shown.
}
folder-marks-bad = { $count ->
    [one] { $count } mark not turned
   *[other] { $count } marks not turned
}
folder-became-still = { $count ->
    [one] { $count } still set aside
   *[other] { $count } still set aside
}
folder-became-apart = { $count ->
    [one] { $count } taken apart, to be washed again
   *[other] { $count } taken apart, to be washed again
}
folder-became-back = { $count ->
    [one] { $count } in use again, by a named person
   *[other] { $count } in use again, by a named person
}
folder-became-opened = { $count ->
    [one] { $count } had been opened before
   *[other] { $count } had been opened before
}
folder-exposures = { $count ->
    [one] Contact with blood: noted { $count } time in the time shown.
   *[other] Contact with blood: noted { $count } times in the time shown.
}

## What a fresh eye found
refused-test-open = A spore test of this machine failed. It stays out of use.
    .do = Go to the spore tests: test again, and read it good.
refused-packed-later = Pouch { $code } was packed after that run began. It was not in it.
    .do = Put it into a new run.
refused-before-that-run = The machine’s last run was still in it then. Nothing was written.
refused-later-overlaps = Machine { $machine } had another run in that time. Nothing was written.
    .do = Look at the times on the paper.

## In charge
refused-in-charge = Only somebody in charge signs this. Nothing was written.
    .do = Ask who is in charge. Setting aside is always open to everyone.

## A run of which nothing is known
run-nothing-said = Nobody has said what was in this run, so nothing of it is on the shelf here. Pack the next load here first.
