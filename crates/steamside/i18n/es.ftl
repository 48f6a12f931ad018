### Spanish, as nail salons in the Americas speak it. Every line is marked draft until somebody of
### the trade who grew up with the language has read it; then: checked.

## Frame
# draft
program-name = Steamside
# draft
skip = Ir al trabajo
# draft
places = Lugares
# draft
language = Idioma
# draft
place-now = AHORA
# draft
place-ready = LISTO
# draft
place-machine = MÁQUINA
# draft
place-log = REGISTRO
# draft
book-demo = DEMO: inventado
# draft
book-practice = PRÁCTICA
# draft
did = Anotado: { $what }
# draft
undo = Deshacer
# draft
undo-release = Retirar: apartar
# draft
foot-manual = El manual de la máquina y las normas locales van primero.
# draft
foot-person = Esta herramienta ayuda a decidir a una persona capacitada. No es un dispositivo médico.
# draft
back = Volver
# draft
since = Desde
# draft
not-known = no se sabe
# draft
minutes = min
# draft
seconds = s
# draft
one-fewer = Uno menos: { $what }
# draft
one-more = Uno más: { $what }

## Dates
# draft
date-day = { $weekday } { $day } { $month }
# draft
date-short = { $day } { $month }
# draft
weekday-1 = lun
# draft
weekday-2 = mar
# draft
weekday-3 = mié
# draft
weekday-4 = jue
# draft
weekday-5 = vie
# draft
weekday-6 = sáb
# draft
weekday-7 = dom
# draft
month-1 = ene
# draft
month-2 = feb
# draft
month-3 = mar
# draft
month-4 = abr
# draft
month-5 = may
# draft
month-6 = jun
# draft
month-7 = jul
# draft
month-8 = ago
# draft
month-9 = sep
# draft
month-10 = oct
# draft
month-11 = nov
# draft
month-12 = dic

## Names
# draft
machine-name = Máquina { $machine }
# draft
run-name = Máquina { $machine }, tanda { $run }
# draft
run-unnamed = una tanda
# draft
run-unclaimed = un registro sin tanda
# draft
chair-name = silla { $chair }
# draft
pouch-count = { $count ->
    [one] 1 bolsa
   *[other] { $count } bolsas
}

## Signs
# draft
sign-none = Aún no hay firmas. Agregue la suya primero.
# draft
sign-gone = (borrada)
# draft
sign-label = Su firma: iniciales y una palabra, como HL pez
# draft
sign-example = HL pez
# draft
sign-add = Agregar esta firma

## States
# draft
state-used = usado
# draft
state-soaking = en remojo
# draft
state-washed = lavado
# draft
state-disinfected = desinfectado
# draft
state-bagged = en bolsa
# draft
state-in-machine = en la máquina
# draft
state-to-check = por revisar
# draft
state-ready = listo
# draft
state-use-now = usar ya
# draft
state-opened = abierto
# draft
state-set-aside = apartado
# draft
state-away = fuera
# draft
state-retired = dado de baja
# draft
state-missing = falta

## What a record proves
# draft
outcome-did = El vapor hizo su trabajo
# draft
outcome-did-not = El vapor no hizo su trabajo
# draft
outcome-cannot-tell = No se puede saber
# draft
outcome-leak-pass = Prueba de fuga: dentro del límite
# draft
outcome-leak-fail = Prueba de fuga: fuera del límite
# draft
outcome-none = Aún sin números
# draft
contents-unwrapped = sin bolsa, macizo
# draft
contents-pouched = en bolsas, macizo
# draft
contents-hollow = hay piezas huecas
# draft
contents-unknown = nadie dijo qué había
# draft
known-tapped = lo dijo una persona
# draft
known-scanned = leído o escrito
# draft
known-measured = medido
# draft
known-read = leído en la pantalla
# draft
known-by-clock = por reloj
# draft
known-worked-out = calculado
# draft
known-setting = ajuste
# draft
known-from-paper = de papel
# draft
basis-record = Medido: del registro de la propia máquina. Juez { $judge }.
# draft
basis-reading = Leído: una persona leyó los números en la pantalla. Juez { $judge }.
# draft
verdict-not-carried = Pero estos números no alcanzan para lo que había dentro.
# draft
drying-as-set = El secado fue completo
# draft
drying-short = El secado fue corto
# draft
drying-none = Sin secado
# draft
drying-cannot-tell = No se puede saber
# draft
drying-only-looks = Un registro no ve si una bolsa está seca. Solo mirando se sabe.

## Reasons of a verdict
# draft
reason-hold-met = A temperatura durante { $held }; hacían falta { $needed }.
# draft
reason-hold-short = A temperatura solo { $held }; hacían falta { $needed }.
# draft
reason-hold-border = A temperatura { $held }, demasiado cerca de { $needed } para estar seguros.
# draft
reason-dip = La temperatura bajó de { $set }. El tiempo más largo sin bajar es { $held }.
# draft
reason-over-band = Más caliente de lo permitido: hasta { $highest }, ajuste { $set }.
# draft
reason-air-left = Quedó aire dentro: el vapor se aparta { $deviation } de lo que promete la presión.
# draft
reason-superheat = El vapor estaba demasiado seco: { $deviation } aparte de lo que promete la presión.
# draft
reason-gasket-leak = La cámara tiene fuga. Mire la junta de la puerta.
# draft
reason-leak-rate = La presión sube demasiado rápido en la prueba de fuga.
# draft
reason-sensor-offset = Temperatura y presión no concuerdan: un sensor se aparta unos { $deviation }.
# draft
reason-sensor-frozen = Un sensor está quieto mientras la cámara cambia.
# draft
reason-sensor-derived = Una columna está calculada de la otra. No prueba nada más.
# draft
reason-no-pressure = El registro no tiene presión que sirva.
# draft
reason-gauge-as-absolute = La presión cuenta desde el aire de fuera, no desde cero. Así se leyó.
# draft
reason-set-unclear = No está claro qué temperatura se ajustó.
# draft
reason-unit-unclear = No está clara la unidad de una columna.
# draft
reason-gap-in-hold = Faltan muestras en el tiempo a temperatura.
# draft
reason-truncated = El registro termina demasiado pronto.
# draft
reason-aborted = El registro dice que la tanda se paró o falló.
# draft
reason-clock-jump = El reloj de la máquina saltó.
# draft
reason-rows-missing = Faltan líneas del registro.
# draft
reason-rows-doubled = Hay líneas repetidas. Se quitaron.
# draft
reason-rows-swapped = Había líneas fuera de lugar. Se ordenaron.
# draft
reason-drying-short = El secado fue corto: { $drying }.
# draft
reason-drying-none = No hubo secado.
# draft
reason-weak-heater = Tardó en calentar. La resistencia puede estar débil.
# draft
reason-clogged-filter = El aire entró despacio. El filtro puede estar tapado.
# draft
reason-load-not-covered = Estos números no alcanzan para lo que había dentro.
# draft
reason-unreadable = Este archivo no se pudo leer como registro.
# draft
place-time = { $from } a { $to }
# draft
place-lines = líneas { $first } a { $last }

## DO NOT USE
# draft
do-not-use = NO USAR
# draft
stop-numbers = Los números de la tanda no se alcanzaron
# draft
stop-cannot-tell = Los números no dejan saber
# draft
stop-mark = Una marca no cambió
# draft
stop-wet = Mojada
# draft
stop-torn = Rota
# draft
stop-dropped = Se cayó
# draft
stop-interrupted = La tanda se interrumpió
# draft
stop-release-undone = Se retiró la liberación
# draft
stop-recall = Retirada
# draft
stop-judged-worse = Juzgada de nuevo, y peor
# draft
stop-not-sure = Alguien no estaba seguro
# draft
stop-unknown = Este código no está en este registro.
# draft
stop-unknown-do = Léalo otra vez. Si sigue sin estar, no use la bolsa.
# draft
stop-opened = Ya se abrió: { $at }. Una bolsa se usa una vez.
# draft
stop-too-late = Se acabó su tiempo. Cuenta como usado.
# draft
stop-bagged = Aún no estuvo en una máquina.
# draft
stop-to-check = Aún sin revisar.
# draft
stop-apart = Desarmada. Una bolsa no se usa dos veces.
# draft
stop-do-aside = Póngala en la bandeja NO USAR. Tome otra bolsa.
# draft
stop-do-used = Ponga el juego en el recipiente de usados. Tome otra bolsa.
# draft
stop-do-start = Póngala con las que esperan máquina. Tome otra bolsa.
# draft
stop-do-check = Devuélvala a su tanda. Tome otra bolsa.
# draft
stop-another = Tengo otra
# draft
stopped-1 = Ponga todo en la bandeja NO USAR.
# draft
stopped-2 = Abra, lave otra vez, seque, bolsa nueva, marca nueva.
# draft
stopped-3 = Repita la tanda con menos bolsas.
# draft
stopped-4 = Dos veces en una semana: haga revisar la máquina.
# draft
contradicted = Dos anotaciones se contradicen; vale la más segura.

## Cautions
# draft
caution-hot = CALIENTE. Pinzas o guantes para calor. Deje enfriar. Nunca abra con presión.
# draft
caution-sharp = Puntas filosas. Articulaciones abiertas, puntas lejos de usted.
# draft
caution-gloves = Guantes gruesos y protección de ojos para lo sucio y los líquidos fuertes.
# draft
caution-manual = El manual de la máquina y las normas locales van primero.

## Now
# draft
now-title = Ahora
# draft
now-quiet = Nada necesita manos.
# draft
check-pouches = { $count ->
    [one] Revisar 1 bolsa
   *[other] Revisar { $count } bolsas
}
# draft
washed-waiting = { $count ->
    [one] 1 juego lavado espera bolsa
   *[other] { $count } juegos lavados esperan bolsa
}
# draft
bagged-waiting = { $count ->
    [one] 1 bolsa espera máquina
   *[other] { $count } bolsas esperan máquina
}
# draft
unclaimed-title = Un registro sin tanda
# draft
unclaimed-clock = Reloj de la máquina: { $clock }
# draft
apart-title = { $count ->
    [one] 1 bolsa para desarmar
   *[other] { $count } bolsas para desarmar
}
# draft
apart-do = Abra, lave otra vez, seque, bolsa nueva, marca nueva, tanda nueva.
# draft
apart-open = Están abiertas y en el recipiente de usados
# draft
apart-asks = Desarmadas: toque su firma
# draft
go-check = REVISAR
# draft
go-pack = EMBOLSAR
# draft
go-start = INICIAR TANDA
# draft
go-run = Sobre esta tanda
# draft
go-claim = ¿QUÉ TANDA?
# draft
go-chair = ABRIR EN UNA SILLA

## Wash and pack
# draft
wash-title = Lavar y embolsar
# draft
bin-about = { $count ->
    [0] El recipiente de usados está vacío
    [one] Usados: cerca de 1 juego
   *[other] Usados: cerca de { $count } juegos
}
# draft
wash-look = ¿Lavado, seco, mirado, aceitado? Óxido, sin filo, flojo: sepárelo.
# draft
wash-asks = Lavado, manos limpias: toque su firma
# draft
kinds-none = Aún no se contó ningún juego
# draft
kinds-none-do = Diga una vez qué juegos tiene y cuántos.
# draft
pack-none = Nada lavado espera bolsa
# draft
pack-none-do = Primero toque su firma bajo lo lavado.
# draft
pack-kind = { $count ->
    [one] Embolsar { $kind }: 1 lavado
   *[other] Embolsar { $kind }: { $count } lavados
}
# draft
pack-cautions = Articulaciones abiertas. Sin tocarse. Máximo tres cuartos.
# draft
pack-how-many = Bolsas
# draft
pack-into = En
# draft
pack-pouched = una bolsa cada uno
# draft
pack-open = abierto, con placa numerada, para usar ya
# draft
pack-hollow = hay algo hueco dentro (agujero, tubo)
# draft
pack-asks = Embolsado: toque su firma

## Start
# draft
start-title = Iniciar una tanda
# draft
start-no-machine = No hay máquina libre
# draft
start-no-pouch = Ninguna bolsa espera máquina
# draft
start-inside = { $count ->
    [one] Entra 1 bolsa
   *[other] Entran { $count } bolsas
}
# draft
start-contents = Por donde el vapor tiene que pasar: { $contents }.
# draft
start-which = Qué bolsas
# draft
start-over = Más de lo que se probó en esta bandeja ({ $most }).
# draft
start-programme = Programa, como lo llama la máquina
# draft
start-cautions = Nada apilado, nada toca la pared, agua revisada, puerta cerrada.
# draft
start-asks = INICIAR: toque su firma

## A run in its machine
# draft
strip-ends = Suele terminar hacia las { $at }
# draft
strip-time-up = Se cumplió el tiempo: mire la máquina
# draft
strip-too-few = Muy pocas tandas para saber cuándo termina
# draft
strip-started = Empezó { $at }.
# draft
strip-usual = { $runs ->
    [one] Aquí suele tardar { $low } a { $high } min, según 1 tanda.
   *[other] Aquí suele tardar { $low } a { $high } min, según { $runs } tandas.
}
# draft
strip-by-clock = Por reloj: aquí nadie ve dentro de la máquina.
# draft
unload-asks = Fuera de la máquina, en la rejilla: toque su firma
# draft
unloaded-at = Fuera de la máquina:

## Machine
# draft
machine-title = Máquinas
# draft
machine-none = Aún no hay máquina
# draft
machine-out = Fuera de uso
# draft
machine-out-do = Poner fuera de uso
# draft
machine-back-asks = De nuevo en uso: toque su firma
# draft
machine-last = Últimas tandas
# draft
machine-no-runs = Aún ninguna
# draft
machine-clock = Su reloj: { $ahead } min adelantado
# draft
machine-clock-ahead = Minutos que su reloj va adelantado (menos: atrasado)
# draft
machine-clock-asks = Reloj comparado: toque su firma
# draft
reads-title = Cómo se leen sus registros: { $what }
# draft
reads-how = Lo que diga aquí va antes que el archivo. Diga solo lo que leyó en la pantalla o en su manual.
# draft
reads-temperature = Sus temperaturas están en
# draft
reads-pressure = Sus presiones están en
# draft
reads-reference = Con la puerta abierta, su presión muestra
# draft
reads-gauge = cerca de 0 (manométrica)
# draft
reads-absolute = el aire: cerca de 100 kPa, 1 bar, 14.7 psi; menos en la altura (absoluta)
# draft
reads-gauge-short = manométrica
# draft
reads-absolute-short = absoluta
# draft
reads-dates = Sus fechas empiezan con
# draft
reads-day-first = el día primero
# draft
reads-month-first = el mes primero
# draft
reads-altitude = Altura del salón sobre el mar, en metros
# draft
reads-as-file = como dice el archivo
# draft
reads-asks = Lo sé: toque su firma
# draft
ask-title = Una pregunta
# draft
ask-units = ¿En qué unidades escribe esta máquina sus temperaturas y presiones, y cómo sus fechas?
# draft
ask-gauge = El archivo dice que sus presiones cuentan desde cero, y parecen contar desde el aire de fuera: ¿qué muestra esta máquina con la puerta abierta?
# draft
ask-set = ¿Qué temperatura se ajustó? Solo la pantalla o el papel lo dicen; sin eso, otra tanda.
# draft
ask-which = ¿Qué máquina escribió este archivo?
# draft
ask-kept = La respuesta se guarda para esa máquina, y sus registros que no podían decir se juzgan otra vez. ¿No está seguro? Déjelo: mientras tanto no se libera nada.
# draft
drift-title = Cambia de tanda en tanda
# draft
drift-line = { $figure }: { $change } desde cerca de { $since }.
# draft
drift-very-sure = Muy seguro.
# draft
drift-sure = Seguro.
# draft
drift-just-past = Apenas pasa la marca.
# draft
drift-part-heater = Apunta al calentador: sarro, una conexión floja, una resistencia débil.
# draft
drift-part-seal = Apunta a la junta de la puerta: suciedad, cortes, desgaste.
# draft
drift-part-pump = Apunta a la bomba de vacío.
# draft
drift-part-filter = Apunta al filtro de aire: tapado o mojado.
# draft
drift-part-filter-fast = Apunta al filtro de aire: ¿nuevo, roto o sin poner? Sin él entra aire sin filtrar.
# draft
drift-part-drain = Apunta al desagüe: colador, válvula de escape, manguera.
# draft
drift-part-unclear = Qué pieza es, estas cifras no lo dicen.
# draft
drift-share = (Esta pieza: { $share } de 100. Práctica común, sin fuente.)
# draft
drift-proven = Visto en esta tanda
# draft
drift-ask = Dice qué cambió, no qué está roto: pregunte al técnico. Ningún registro se juzga por esto. Apagada, fría y sin presión antes de tocar una pieza; su manual va primero.
# draft
drift-heat-up = Tiempo de calentar
# draft
drift-air-in = Tiempo de dejar entrar aire
# draft
drift-first-pulse = Tiempo del primer vacío
# draft
drift-pulse-depth = Profundidad del vacío antes del vapor
# draft
drift-dry-depth = Vacío al secar
# draft
drift-leak = Fuga al mantener el vacío
# draft
drift-exhaust = Tiempo de soltar el vapor
# draft
drift-total = Duración de la tanda fuera de sus partes conocidas
# draft
drift-plateau-low = Mínima a temperatura
# draft
drift-plateau-high = Máxima a temperatura
# draft
drift-plateau-length = Tiempo a temperatura
# draft
drift-saturation = Distancia de lo que promete la presión
# draft
take-title = Recibir un registro
# draft
take-file = Archivo de la máquina
# draft
take-do = Recibirlo

## A run
# draft
run-started = Empezó
# draft
run-programme = programa { $programme }
# draft
run-undone = inicio deshecho
# draft
run-released = liberada
# draft
run-inside = Qué había dentro
# draft
trace-title = El trazo de la tanda
# draft
trace-temperature = temperatura
# draft
trace-saturation = lo que promete la presión
# draft
trace-pressure = presión
# draft
trace-band = temperatura ajustada y margen, { $from } a { $to } °C
# draft
figures-title = Los números, y de dónde vienen
# draft
figure = Número
# draft
value = Valor
# draft
where-from = De dónde viene
# draft
figure-set = Temperatura ajustada
# draft
figure-held = Tiempo a temperatura
# draft
figure-needed = Tiempo necesario
# draft
figure-lowest = La más baja en ese tiempo
# draft
figure-highest = La más alta en ese tiempo
# draft
figure-deviation = Aparte de lo que promete la presión
# draft
figure-drying-time = Duración del secado
# draft
figure-drying = Secado
# draft
figure-total = Duración del registro
# draft
figure-inside = Qué había dentro
# draft
figure-proven = Probado para
# draft
figure-proven-none = nada
# draft
limits-title = Límites usados

## The three looks
# draft
looks-title = { $count ->
    [one] Mire 1 bolsa
   *[other] Mire las { $count } bolsas
}
# draft
looks-again = Una no estaba bien. Mire otra vez todas las demás.
# draft
look-numbers = ¿Números alcanzados?
# draft
look-numbers-yes = Sí
# draft
look-marks = ¿Cambiaron TODAS las marcas?
# draft
look-marks-how = Cada bolsa, por delante y por detrás. Compare con el color del paquete.
# draft
look-dry = ¿TODAS secas y enteras?
# draft
look-dry-how = Ni gota, ni papel húmedo, ni rotura, ninguna caída. Seca después sigue siendo mojada.
# draft
look-inner = El indicador dentro de la carga: ¿llegó al final?
# draft
look-inner-how = Tipo 5 o 6, en el centro. Sin registro tiene que estar.
# draft
inner-not = NO, O NO ESTÁ
# draft
one-not = UNA NO
# draft
which-marks = ¿Qué marcas no cambiaron?
# draft
which-dry = ¿Cuáles, y qué les pasa?
# draft
marks-reach = Una marca detiene toda la tanda.
# draft
dry-reach = Rota o caída: esa bolsa. Una mojada: esa, y mirar todas otra vez. Dos mojadas: todas.
# draft
one-not-asks = Lo vi: toque su firma
# draft
looks-asks = Miré cada bolsa. TODO BIEN, LIBERAR: toque su firma
# draft
no-release-did-not = Sin liberar: los números no se alcanzaron
# draft
no-release-cannot-tell = Aún sin liberar: los números no dejan saber
# draft
no-release-not-carried = Sin liberar: estos números no alcanzan para lo que había dentro
# draft
no-release-do = Apartar. Abra, lave otra vez, seque, bolsa nueva, marca nueva, tanda nueva.
# draft
no-release-cannot-tell-do = Reciba el registro, o lea tres números en la pantalla. Si no se puede: repita la tanda.
# draft
not-sure = ¿No está seguro?
# draft
set-aside-run = APARTAR TODA LA TANDA
# draft
numbers-title = ¿De dónde vienen los números?
# draft
numbers-file = De un archivo
# draft
numbers-read = De la pantalla o del papel impreso
# draft
numbers-read-how = Escriba solo lo que usted leyó ahí.
# draft
read-lowest = La temperatura más baja mientras estaba a temperatura
# draft
read-degrees = Grados
# draft
read-held = Tiempo a temperatura
# draft
read-pressure = Presión, si la muestra
# draft
read-unit = Unidad de la presión
# draft
unit-kpa-abs = kPa absoluta
# draft
unit-kpa-gauge = kPa manométrica
# draft
unit-bar-abs = bar absoluta
# draft
unit-bar-gauge = bar manométrica
# draft
unit-psi-gauge = psi manométrica
# draft
read-asks = Yo leí esto: toque su firma
# draft
lift-title = ¿Se apartó por error?
# draft
lift-only = Solo se levanta lo apartado por error. Un número, una marca o una mirada que falló no tiene otro camino que una tanda nueva.
# draft
lift-which = Qué bolsas
# draft
lift-why = Por qué
# draft
lift-mistake = se apartó por error
# draft
lift-paperwork = solo faltaba un papel, y ya está
# draft
lift-asks = Levantar: toque su firma

## Ready
# draft
ready-title = Listo
# draft
ready-none = El estante está vacío
# draft
ready-none-do = Aquí están las bolsas después de revisar y liberar su tanda.
# draft
use-now-until = Usar ya: hasta las { $at }
# draft
use-now-how = Con su placa, en bandeja tapada. Enfriar al aire, nunca bajo el grifo. Después cuenta como usado.
# draft
shelf-kind = { $count ->
    [one] { $kind }: 1 listo
   *[other] { $kind }: { $count } listos
}
# draft
shelf-front = Frente: tome de aquí
# draft
shelf-more = y { $count } más
# draft
chairs-today = { $count ->
    [0] Hoy no se abrió nada
    [one] Hoy se abrió 1 en las sillas
   *[other] Hoy se abrieron { $count } en las sillas
}

## Chair
# draft
chair-title = Abrir en una silla
# draft
chair-which = ¿Qué silla?
# draft
chair-order = Primero el código, deje el teléfono, manos limpias, guantes, y abra delante de la clienta.
# draft
chair-look = Mire: ¿seca? ¿entera? ¿marca cambiada?
# draft
chair-not-good = ¿No está bien?
# draft
code-label = Los cuatro signos de la bolsa
# draft
code-look = BUSCAR
# draft
code-clear = borrar
# draft
code-other = Otra bolsa
# draft
pouch-released = Liberada
# draft
opened-asks = ABIERTA AQUÍ: toque su firma
# draft
opened-asks-chair = ABIERTA en la silla { $chair }: toque su firma
# draft
code-keys = Teclas para los cuatro signos
# draft
camera-start = CÁMARA: mirar el código
# draft
camera-picture = Lo que ve la cámara
# draft
camera-stop = Apagar la cámara
# draft
camera-looking = Ponga el código cuadrado en la imagen.
# draft
camera-refused = Aquí no se puede usar la cámara. Haga una foto o toque los cuatro signos.
# draft
photo-label = Foto del código cuadrado
# draft
photo-read = LEER LA FOTO
# draft
photo-not-kept = Se lee aquí y no se guarda.
# draft
photo-no-picture = Esta imagen no se puede leer aquí.
# draft
photo-too-large = La foto es demasiado grande.
# draft
photo-no-code = No hay ningún código en la foto.
# draft
photo-other-code = Es un código, pero no de nuestras bolsas.
# draft
photo-several = Hay más de una bolsa en la imagen.
# draft
photo-again = No se anotó nada. Una sola bolsa, más cerca, con buena luz, en JPEG o PNG. O toque los cuatro signos.
# draft
after-title = Se abrió antes: enlazarla ahora
# draft
after-when = ¿Cuándo se abrió?
# draft
after-minutes = hace unos { $minutes } minutos
# draft
after-asks = ENLAZAR DESPUÉS: toque su firma
# draft
need-another = Necesito otro juego
# draft
another-title = Necesito otro
# draft
another-used = Abierta: cuenta como usada. Póngala en el recipiente de usados.
# draft
another-none = No hay ningún juego de { $kind } listo
# draft
another-none-do = Use útiles de un solo uso o pregunte en el fregadero. Nada sin revisar llega a una clienta.
# draft
another-take = TOME { $code }
# draft
blood-title = ¿Sangre?
# draft
blood-1 = Pare. Diga qué pasó.
# draft
blood-2 = Póngase guantes nuevos.
# draft
blood-3 = Enjuague la herida con agua, presione con una gasa limpia y cúbrala.
# draft
blood-4 = Para cortar la sangre: solo de un envase de un solo uso. Nunca una barra o frasco compartido.
# draft
blood-5 = El útil va al recipiente de usados; lo de un solo uso, a la basura.
# draft
blood-6 = Limpie y desinfecte lo que tocó la sangre. Quítese los guantes, lávese las manos.
# draft
blood-7 = Anote la línea del incidente: hora, silla, bolsa, qué pasó.
# draft
blood-exposed = ¿Sangre de una persona en una herida o un ojo de otra? Llame ya a un profesional médico o a la autoridad sanitaria.
# draft
blood-rules = Las normas locales van primero.
# draft
stop-spare = ¿Dónde hay otro juego listo?
# draft
unknown-aside = NO USAR: tengo otra
# draft
unknown-salon = De otro de nuestros salones
# draft
unknown-salon-do = Este registro no puede saber si allí se revisó. Póngala en la bandeja NO USAR y pregunte a ese salón.
# draft
unknown-roll = De un rollo viejo de etiquetas
# draft
unknown-roll-do = Una etiqueta vieja no prueba ninguna tanda. Abra, lave otra vez, seque, bolsa nueva, etiqueta nueva.

## Labels
# draft
labels-title = Códigos y etiquetas
# draft
labels-none = En ese paso no se embolsó nada.
# draft
labels-print = Imprimir
# draft
labels-hand = ¿Sin impresora? Escriba el código en la solapa o el plástico con un marcador blando. Nunca en el papel.
# draft
labels-steam = Las etiquetas de oficina no son para vapor. Pruebe tres etiquetas en tres tandas primero.
# draft
labels-stock = Etiquetas
# draft
labels-letter = hoja Carta, 30 etiquetas
# draft
labels-a4 = hoja A4, 21 etiquetas
# draft
labels-roll = rollo, 25 × 25 mm
# draft
labels-start = Primera etiqueta que queda en la hoja
# draft
labels-show = Mostrar
# draft
label-sentence = Embolsado { $day }. Mire: ¿seca? ¿entera?
# draft
print-page = página { $page } de { $of }
# draft
print-printed = Impreso { $at }
# draft
print-scale = 50 mm. Si no, imprima otra vez al 100 %.
# draft
print-stock = Las etiquetas de oficina no son para vapor: pruebe tres primero.
# draft
print-machine = Máquina
# draft
print-run = Tanda
# draft
print-machine-short = M
# draft
print-run-short = T
# draft
labels-refused = No se pudieron dibujar las etiquetas. Escriba los códigos a mano; valen igual.

## Log
# draft
log-title = Registro
# draft
log-empty = Aún no hay nada anotado.
# draft
log-later = anotado después: { $at }
# draft
log-linked = enlazada después: { $at }
# draft
log-undone = retirado
# draft
log-older = Más antiguo
# draft
log-newest = Lo más nuevo
# draft
log-station = estación { $station }
# draft
log-program = automático
# draft
log-verify = Cada línea se apoya en la anterior. steamside verify muestra si se cambió alguna.
# draft
go-recall = Retirada

## Recall
# draft
recall-title = Retirada
# draft
recall-how = Desde la tanda después de la última prueba de esporas buena hasta que la máquina quedó fuera de uso.
# draft
recall-authority = La autoridad sanitaria dirige. Llámela antes de llamar a las clientas. Esta lista dice quién estuvo, y nada sobre el riesgo.
# draft
recall-machine = Máquina
# draft
recall-from = Desde
# draft
recall-to = Hasta
# draft
recall-do = Mostrar la lista
# draft
recall-runs = { $count ->
    [one] 1 tanda
   *[other] { $count } tandas
}
# draft
recall-shelf = { $count ->
    [one] 1 bolsa sin abrir: quítela del estante
   *[other] { $count } bolsas sin abrir: quítelas del estante
}
# draft
recall-unlinked = { $count ->
    [one] 1 abierta sin visita
   *[other] { $count } abiertas sin visita
}
# draft
recall-gone = { $count ->
    [one] 1 fuera de la ronda
   *[other] { $count } fuera de la ronda
}
# draft
recall-visits = { $count ->
    [one] 1 visita
   *[other] { $count } visitas
}
# draft
recall-date = Día
# draft
recall-time = Hora
# draft
recall-chair = Silla
# draft
recall-code = Código
# draft
recall-of-run = Tanda
# draft
recall-start-unknown = La tanda desde la que se cuenta no está en el registro: todo entra en la lista.
# draft
recall-nothing = No alcanza a nada.
# draft
recall-from-run = Retirada desde esta tanda
# draft
recall-set-aside = NO USAR: apartar todas estas

## Unclaimed
# draft
claim-title = ¿Qué tanda es esta?
# draft
claim-how = No se adivina nada. Compare el reloj de la máquina con el inicio de la tanda.
# draft
claim-no-clock = El registro no tiene reloj.
# draft
claim-taken = Llegó
# draft
claim-none = No hay tanda sin registro que corresponda. Inicie una, o deje el registro aquí.
# draft
claim-asks = Esta tanda: toque su firma
# draft
claim-done = Este registro ya pertenece a una tanda.

## Setup
# draft
setup-title = Ajustes
# draft
setup-machines = Máquinas
# draft
setup-machine-add = Agregar una máquina
# draft
setup-signs = Firmas
# draft
setup-signs-how = Una firma es solo suya: iniciales y una palabra, sin nombre completo. Tocarla hace el paso y lo firma.
# draft
setup-sets = Juegos
# draft
setup-sets-how = Cuente una vez. Desde ahí los usados se calculan.
# draft
setup-languages = Idiomas
# draft
setup-zone = Zona horaria: { $zone }
# draft
setup-no-device = Esta herramienta muestra lo que un registro prueba y lo que la gente vio. No muestra lo que nadie puede saber.
# draft
first-all = Ajustar lo demás
# draft
machine-number = Número en la puerta
# draft
machine-air = ¿Cómo saca el aire?
# draft
air-vacuum = con bomba de vacío
# draft
air-gravity = el vapor lo empuja
# draft
air-not-known = no se sabe
# draft
machine-files = escribe un archivo por tanda
# draft
machine-no-files = sin archivos
# draft
machine-most = bandeja probada con { $most } bolsas
# draft
machine-most-not-known = máximo de bolsas no se sabe
# draft
machine-most-ask = Máximo de bolsas con que se probó su bandeja
# draft
machine-add = Agregar esta máquina
# draft
person-left = Ya no está aquí
# draft
person-left-asks = Quitar esta firma: toque la suya
# draft
sets-kind = { $kind }: { $owned } en total
# draft
sets-new = Otro tipo de juego
# draft
sets-kind-label = Tipo, en minúsculas
# draft
sets-kind-example = manicure
# draft
sets-owned = Cuántos tiene el salón
# draft
sets-used = En el recipiente de usados ahora
# draft
sets-washed = Lavados, sin bolsa
# draft
sets-asks = Contado: toque su firma
# draft
language-own = el idioma en que se escriben las líneas
# draft
language-drafts = { $drafts } de { $lines } líneas son borradores: nadie del oficio que creció con el idioma las ha leído aún
# draft
language-checked = las { $lines } líneas leídas por alguien del oficio
# draft
language-partial = por ahora { $lines } de { $all } líneas, todas en borrador; el resto está en inglés
# draft
language-draft = (borrador)

## Lines of the log
# draft
line-washed = { $count ->
    [one] 1 juego lavado ({ $kind }).
   *[other] { $count } juegos lavados ({ $kind }).
}
# draft
line-packed = { $count ->
    [one] 1 juego embolsado ({ $kind }).
   *[other] { $count } juegos embolsados ({ $kind }).
}
# draft
line-started = { $count ->
    [one] { $run } empezó con 1 bolsa.
   *[other] { $run } empezó con { $count } bolsas.
}
# draft
line-unloaded = { $run }: fuera de la máquina.
# draft
line-taken = { $count ->
    [one] Registro recibido, 1 ciclo.
   *[other] Registro recibido, { $count } ciclos.
}
# draft
line-claimed = El registro pertenece a { $run }.
# draft
line-judged = { $run }: { $outcome } ({ $known }).
# draft
line-looked = { $run } mirada.
# draft
line-looked-inner = El indicador de dentro no llegó al final.
# draft
line-looked-marks = Marca sin cambiar: { $what }.
# draft
line-looked-wet = Mojada: { $what }.
# draft
line-looked-torn = Rota: { $what }.
# draft
line-looked-dropped = Caída: { $what }.
# draft
line-released = { $count ->
    [one] { $run }: 1 bolsa liberada.
   *[other] { $run }: { $count } bolsas liberadas.
}
# draft
line-set-aside = Apartado: { $what }. { $why }.
# draft
line-lifted-mistake = Levantado: { $what }. Fue por error.
# draft
line-lifted-paperwork = Levantado: { $what }. Faltaba un papel.
# draft
line-opened = { $what } abierta.
# draft
line-opened-chair = { $what } abierta en la silla { $chair }.
# draft
line-apart = Desarmado: { $what }.
# draft
line-undone = Se retiró una anotación anterior.
# draft
line-opened-book = Empieza el registro. Zona horaria { $zone }.
# draft
line-zone = Zona horaria: { $zone }.
# draft
line-joined = { $sign } trabaja aquí.
# draft
line-left = { $sign } ya no trabaja aquí.
# draft
line-machine = Está { $machine }: saca el aire { $air }.
# draft
line-clock = El reloj de { $machine } va { $ahead } adelantado.
# draft
line-reads = Cómo se leen los registros de { $machine }: { $what }.
# draft
line-out = { $machine } fuera de uso.
# draft
line-back = { $machine } de nuevo en uso.
# draft
line-owned = { $kind }: { $count } en total, contados.
# draft
line-counted = { $kind }: { $used } usados, { $washed } lavados, contados.

## Not done
# draft
refused-title = No se hizo
# draft
refused-heading = Esto no se hizo
# draft
refused-safe = No se anotó nada. Todo sigue como estaba.
# draft
refused-do = Vuelva y mire otra vez.
# draft
refused-no-sign = No lleva firma.
    .do = Vuelva y toque su propia firma.
# draft
refused-no-such-act = No existe ese paso.
# draft
refused-no-such-page = No existe esa página, o trata de algo que no está en el registro.
    .do = Vuelva a AHORA.
# draft
refused-no-such-person = Esa firma no está en el registro.
    .do = Vuelva y toque su propia firma.
# draft
refused-no-such-machine = Esa máquina no está en el registro.
# draft
refused-no-such-pouch = Esa bolsa no está en el registro.
    .safe = No se anotó nada. No use la bolsa.
# draft
refused-no-such-run = Esa tanda no está en el registro, o se deshizo su inicio.
# draft
refused-no-such-record = Ese archivo no está en el registro.
# draft
refused-nothing-chosen = No se eligió nada.
    .do = Vuelva y elija al menos una.
# draft
refused-nothing-counted = La cuenta es cero.
    .do = Vuelva y cuente otra vez.
# draft
refused-too-many = Son más de { $most } de una vez.
    .do = Mire el número. Si está bien, anótelo en dos partes.
# draft
refused-field-missing = Falta algo: { $field }.
    .do = Vuelva y complételo.
# draft
refused-field-misread = Esto no se pudo leer: { $field }.
    .do = Vuelva y escríbalo otra vez: números con cifras, palabras en minúsculas.
# draft
refused-not-to-hand = La bolsa { $code } está en una máquina, abierta o fuera de la ronda.
# draft
refused-opened-before = A esa hora la bolsa { $code } aún no estaba liberada.
    .do = Vuelva y elija una hora posterior. Si se abrió antes de liberarla, apártela.
# draft
refused-machine-number = Una máquina tiene un número de 1 a 99.
# draft
refused-number-taken = Ya hay una máquina { $machine }.
    .do = Vuelva y dé el número siguiente.
# draft
refused-clock-offset = Más de un año no es un reloj adelantado.
    .do = Compare otra vez el reloj de la máquina con esta página.
# draft
refused-machine-out = La máquina { $machine } está fuera de uso.
    .safe = No se anotó nada. No la inicie.
    .do = Use otra máquina.
# draft
refused-machine-full = Ya hay una tanda en la máquina { $machine }.
    .do = Sáquela primero: toque su firma bajo esa tanda.
# draft
refused-nothing-inside = No se eligió ninguna bolsa.
    .do = Vuelva y elija lo que entra.
# draft
refused-not-bagged = La bolsa { $code } no espera máquina.
    .do = Mire otra vez el código de la bolsa.
# draft
refused-over-tested = Más de { $most } bolsas: la bandeja no se probó con tantas.
    .safe = No se anotó nada. Una bandeja muy llena deja bolsas mojadas.
    .do = Saque algunas, o vuelva y diga que lo sabe.
# draft
refused-already-unloaded = Esa tanda ya salió de su máquina.
    .do = Siga con la revisión.
# draft
refused-not-unloaded = La carga sigue en la máquina.
    .safe = No se liberó nada.
    .do = Sáquela primero: toque su firma bajo la tanda.
# draft
refused-no-numbers = Aún no hay números para esta tanda.
    .safe = No se liberó nada. No use estas bolsas.
    .do = Reciba el registro, o lea tres números en la pantalla.
# draft
refused-nothing-to-check = Ninguna bolsa de esta tanda espera revisión.
# draft
refused-not-in-this-run = Se nombró una bolsa que no estaba en esta tanda.
    .safe = No se liberó nada.
    .do = Mire otra vez el código de la bolsa.
# draft
refused-which-mark = ¿Qué marca no cambió?
    .safe = No se liberó nada. No use estas bolsas.
    .do = Vuelva y elija las bolsas. ¿No sabe cuál? Aparte toda la tanda.
# draft
refused-which-wet = ¿Qué bolsa está mojada, rota o se cayó?
    .safe = No se liberó nada. No use estas bolsas.
    .do = Vuelva y elija las bolsas. ¿No sabe cuál? Aparte toda la tanda.
# draft
refused-no-talking-back = El registro muestra que los números no se alcanzaron. Una lectura no lo cambia.
    .safe = No se liberó nada. No use estas bolsas.
    .do = Abra, lave otra vez, seque, bolsa nueva, marca nueva, tanda nueva.
# draft
refused-not-stopped = La bolsa { $code } no está apartada.
# draft
refused-no-way-back = La bolsa { $code } falló un número, una marca o una mirada.
    .safe = Sigue apartada. No la use.
    .do = Abra, lave otra vez, seque, bolsa nueva, marca nueva, tanda nueva.
# draft
refused-undone-already = Eso ya se retiró.
# draft
refused-nothing-to-undo = No hay nada que retirar.
# draft
refused-no-undo = Esto no se retira con un toque.
    .do = Queda en el registro. Si está mal, cuente otra vez o aparte.
# draft
refused-run-has-record = Esa tanda ya tiene registro.
# draft
refused-record-claimed = Ese registro ya pertenece a una tanda.
# draft
refused-record-deleted = El archivo de ese registro se borró.
    .safe = No se anotó nada. Lo juzgado antes sigue valiendo.
    .do = Reciba el archivo otra vez.
# draft
refused-record-unreadable = Ese archivo no se pudo leer como registro.
    .safe = No se liberó nada. No use estas bolsas.
    .do = Lea tres números en la pantalla, o repita la tanda.
# draft
refused-sign-length = Una firma tiene de 1 a { $most } caracteres.
    .do = Vuelva: iniciales y una palabra.
# draft
refused-sign-taken = La firma { $sign } ya existe.
    .do = Vuelva y elija otra palabra.
# draft
refused-no-file = No se eligió ningún archivo.
    .do = Vuelva y elija el archivo de la máquina.
# draft
refused-empty-file = Ese archivo está vacío.
    .do = Cópielo otra vez de la máquina.
# draft
refused-large-file = Ese archivo pasa de { $most } MB.
    .do = Elija el registro de una tanda.
# draft
refused-upload-cut = El archivo no llegó entero.
    .do = Envíelo otra vez.
# draft
refused-zone = { $zone } no es el nombre de una zona horaria.
    .do = Escríbalo como America/Chicago.
# draft
refused-folder = No se puede usar la carpeta: { $why }.
    .do = Elija una carpeta donde este programa pueda escribir.
# draft
trouble-title = El programa no pudo seguir
# draft
trouble-safe = Lo anotado antes está a salvo. El último toque puede no estar anotado.
# draft
trouble-do = Abra AHORA y mire si está. Si pasa otra vez, inicie el programa de nuevo.

# draft
refused-no-answer = La revisión necesita una respuesta.
# draft
refused-two-answers = Dos respuestas a la vez: todo bien, y uno no.
    .do = Mire otra vez y responda una vez. Hasta entonces no se libera nada.
# draft
refused-undo-late = Ya es tarde para deshacer.
    .do = Anote lo que es cierto ahora; el registro guarda ambos.
# draft
refused-undo-moved-on = Ha pasado algo más desde entonces; no se puede deshacer.
    .do = Aparte lo que no se debe usar.
# draft
refused-clock-far = El reloj de este archivo ({ $clock }) está lejos del inicio de esa tanda.
    .do = Si el reloj de la máquina está mal, ajústelo primero en la página MÁQUINA. Si no, es el archivo de otra tanda.
# draft
refused-not-a-run = Este archivo es de una prueba de fugas, no de una tanda.

# draft
unclaimed-more = { $count ->
    [one] Un archivo más sin tanda
   *[other] { $count } archivos más sin tanda
}

# draft
refused-no-altitude = Esta presión cuenta desde el aire, y no se sabe a qué altura está el salón.
    .do = Anote la altura sobre el mar una vez, en la página MÁQUINA, en los ajustes de la máquina. Luego escriba otra vez los números.

## El plan del día
# draft
plan-sets = { $count } { $count ->
    [one] juego
   *[other] juegos
 } de { $kind }
# draft
plan-and = { $one } y { $other }
# draft
plan-run-needed = Inicie el ciclo { $cycle } en la máquina { $machine } a las { $time } con { $sets }. Hacen falta a las { $when }: { $missing }.
# draft
plan-run-tomorrow = Inicie el ciclo { $cycle } en la máquina { $machine } a las { $time } con { $sets }. Hacen falta mañana por la mañana: { $missing }.
# draft
plan-run-reserve = Inicie el ciclo { $cycle } en la máquina { $machine } a las { $time } con { $sets }: quedan de reserva.
# draft
plan-unmet = Faltan a las { $time }: { $sets }.
# draft
plan-way-single-use = Use un kit desechable a las { $time } en lugar de { $sets }.
# draft
plan-way-move = Pase la cita de las { $time } a las { $to }.
# draft
plan-way-earlier = Empiece { $minutes } minutos antes.
# draft
plan-way-machine = Una máquina más como la { $machine }.
# draft
plan-way-person = Una persona más para lavar.
# draft
plan-way-all = Así nadie espera.
# draft
plan-way-part = Así esperan menos.
# draft
kind-manicure = manicura
# draft
kind-pedicure = pedicura
# draft
kind-efile-bits = fresas
# draft
kind-bits = fresas
# draft
kind-nippers = alicates
# draft
kind-foot-kit = pies
# draft
kind-art-tools = decoración
# draft
cycle-fast = rápido
# draft
cycle-middle = medio
# draft
cycle-long = largo
# draft
plan-title = El día
# draft
plan-fault = El día no se puede planear.
# draft
plan-fault-do = Mirar las cifras
# draft
plan-none = Hoy no hay nada que planear.
# draft
plan-none-do = Añada citas u horarios y el día se planea con ellos.
# draft
go-visits = Citas
# draft
go-sets = Cuántos juegos
# draft
go-plan = El plan del día
# draft
plan-runs = Cargas por iniciar
# draft
plan-no-runs = No hace falta ninguna carga.
# draft
plan-dropped = Ya no: ciclo { $cycle } en la máquina { $machine } a las { $time }.
# draft
plan-accept = Aceptar este plan
# draft
plan-accept-changes = Aceptar estos cambios
# draft
plan-spares-out = Se usan los juegos de reserva: si se guardan, alguien tendría que esperar.
# draft
plan-tape = El día en un dibujo
# draft
plan-tape-alt = { $visits } citas, { $runs } cargas. La lista de arriba dice lo mismo.
# draft
plan-chair = Silla { $chair }
# draft
plan-machine = Máquina { $number }
# draft
plan-works = El día sale: nadie espera.
# draft
plan-works-known = Por lo que se sabe, el día sale: nadie espera.
# draft
plan-short-tomorrow = Hoy sale. Mañana por la mañana { $count ->
    [one] falta { $count } juego
   *[other] faltan { $count } juegos
 }.
# draft
plan-somebody-waits = Alguien tendría que esperar.
# draft
plan-ways = ¿Qué ayudaría?
# draft
plan-unknown = { $count ->
    [one] { $count } cita no tiene
   *[other] { $count } citas no tienen
 } servicio todavía: lo que necesita no está en el plan.
# draft
plan-proven-not = No está demostrado que ningún plan sea mejor.
# draft
plan-proven-unmet = Demostrado: ningún plan deja esperar a menos.
# draft
plan-proven-short = Demostrado: ningún plan deja esperar a menos ni deja más listo para mañana.
# draft
plan-proven-runs = Demostrado: ningún plan deja esperar a menos, deja más listo para mañana ni usa menos cargas.
# draft
plan-new = Nuevo
# draft
plan-in = en { $minutes } minutos
# draft
plan-where-from = De dónde salen los números
# draft
plan-wash-time = Lavar un juego: aquí { $median } minutos, la mitad de las veces de { $low } a { $high } (calculado con { $count } veces).
# draft
plan-wash-time-typical = Lavar un juego: un ajuste; hay muy pocas veces en el libro para saberlo.
# draft
plan-pack-time = Empacar un juego: aquí { $median } minutos, la mitad de las veces de { $low } a { $high } (calculado con { $count } veces).
# draft
plan-pack-time-typical = Empacar un juego: un ajuste; hay muy pocas veces en el libro para saberlo.
# draft
plan-hands-rota = Manos: los horarios del libro, menos citas y almuerzo.
# draft
plan-hands-assumed = Manos: nadie dio horarios, así que se supone a todo el equipo.
# draft
plan-order-salon = Primero que nadie espere, luego mañana, luego lo menos posible sin secado, luego pocas cargas; lo que pasa la noche se seca del todo antes de ahorrar dinero.
# draft
plan-no-claim = Un plan dice cuándo iniciar, nunca que una carga se pueda usar.
# draft
ways-title = Qué ayudaría
# draft
ways-heading = Cada una de estas se planeó; ninguna es una suposición.
# draft
ways-none = Nada de lo probado ayuda lo suficiente.
# draft
ways-known = Calculado. Puede haber más que lo probado aquí.
# draft
refused-plan-is-old = El plan ya no encaja con las máquinas. No se escribió nada. Abra el plan otra vez.

## Visits, services, working times
# draft
visits-title = Visitas
# draft
visits-add = Añadir una visita: servicio y luego hora
# draft
visits-no-services = Aún no hay ningún servicio. Un servicio dice qué juegos necesita.
# draft
visits-when = { $service }: ¿a qué hora?
# draft
visits-chair = Silla (puede quedar vacía)
# draft
visits-today = Hoy
# draft
visits-tomorrow = Mañana
# draft
visits-count = { $count ->
    [one] Una visita
   *[other] { $count } visitas
}
# draft
visits-unknown = servicio no conocido
# draft
visits-unknown-how = Donde no se conoce el servicio no se planea ningún juego. Diga cuál es o traiga el calendario aquí una vez.
# draft
visits-which = Servicio
# draft
visits-choose = Elegir
# draft
visits-say = Es ese
# draft
visits-closed = Cerrado este día.
# draft
visits-open-after-all = Abierto, después de todo
# draft
visit-booked = reservada
# draft
visit-cancelled = anulada
# draft
visit-missed = no vino
# draft
visit-late-by = { $count } min tarde
# draft
visit-put-back = +{ $count } min tarde
# draft
visit-did-not-come = No vino
# draft
visit-call-off = Anulada
# draft
chair-number = silla { $chair }
# draft
rota-title = Quién trabaja
# draft
rota-none = Nadie está apuntado para hoy ni mañana. El plan cuenta entonces con todas las personas que firman aquí.
# draft
rota-add = Decir quién trabaja cuándo
# draft
rota-lunch = comida
# draft
rota-not = No trabaja
# draft
rota-day = Día
# draft
rota-from = Desde
# draft
rota-to = Hasta
# draft
rota-lunch-from = Comida desde
# draft
rota-lunch-to = Comida hasta
# draft
rota-weeks = Lo mismo en tantas semanas después
# draft
rota-who = ¿Quién?
# draft
bring-title = Calendario
# draft
bring-how = Un archivo de calendario (.ics) o una tabla (.csv) de citas. Los nombres quedan fuera: el libro solo guarda horas y servicios.
# draft
bring-file = Archivo
# draft
bring-do = Tomarlo
# draft
brought-title = Qué cambió el archivo
# draft
brought-booked = { $count ->
    [one] Una visita es nueva
   *[other] { $count } visitas son nuevas
}
# draft
brought-changed = { $count ->
    [one] Una visita ha cambiado
   *[other] { $count } visitas han cambiado
}
# draft
brought-off = { $count ->
    [one] Una visita fue anulada
   *[other] { $count } visitas fueron anuladas
}
# draft
brought-same = { $count ->
    [one] Una visita ya estaba aquí
   *[other] { $count } visitas ya estaban aquí
}
# draft
brought-names = Los títulos solo se ven en esta página. No se guardan.
# draft
ask-how = Elija las palabras que significan el servicio, sin nombre, y el servicio. La próxima vez ya se sabe.
# draft
ask-no-services = Describa primero sus servicios; luego traiga el archivo otra vez.
# draft
ask-count = { $count ->
    [one] Una visita, como
   *[other] { $count } visitas, como
}
# draft
ask-words = O escriba las palabras
# draft
ask-later = preguntar otra vez
# draft
ask-no-visit = ningún cliente: no hace falta juego
# draft
ask-do = Guardar estas respuestas
# draft
closed-title = Un día entero
# draft
closed-asks = “{ $title }”, del { $from } al { $to }: ¿está cerrado el salón?
# draft
closed-do = Cerrado
# draft
odd-title = No se pudo tomar
# draft
odd-count = { $count ->
    [one] Una entrada quedó fuera.
   *[other] { $count } entradas quedaron fuera.
}
# draft
odd-zone = no se sabe qué zona horaria es “{ $zone }”
# draft
odd-rule = no se puede seguir la regla con que se repite
# draft
odd-time = no se sabe cuándo es
# draft
odd-do = Reserve estas a mano, sobre todo las de hoy.
# draft
services-title = Servicios y cifras
# draft
services-how = Un servicio dice cuánto dura y qué juegos necesita. El plan del día se apoya en ello.
# draft
service-add = Un servicio nuevo
# draft
service-word = Cómo se llama
# draft
service-minutes = Minutos
# draft
service-needs = Juegos que necesita un cliente
# draft
service-weight = Qué grave es que falte un juego (1 a 9)
# draft
service-basin = Limpiar la pila de pies, minutos (0: ninguna)
# draft
service-keep = Guardar
# draft
service-end = Ya no se ofrece
# draft
minutes-count = { $count } min
# draft
hands-title = Cuánto tardan aquí las manos
# draft
hands-wash = Lavado, secado, mirado, un juego
# draft
hands-pack = A la bolsa, un juego
# draft
hands-spread = { $median } min en el medio; la mitad de las veces entre { $lower } y { $upper } ({ $count } veces)
# draft
hands-none = aún no medido
# draft
hands-how = Calculado de los toques: del toque anterior de la persona al que dice que está hecho. Por eso sale más bien largo que corto.
# draft
kind-figures-title = Tipos de juegos
# draft
kind-mass = Masa de un juego, g
# draft
kind-hand = Manos por juego, minutos
# draft
kind-pouch = Una bolsa cuesta, céntimos
# draft
kind-target = Listos al final del día
# draft
kind-spares = De reserva, sin prometer a ninguna visita
# draft
machine-figures-title = Programas de las máquinas
# draft
machine-warm = Sigue caliente, minutos
# draft
programme-more = Un programa más
# draft
programme-word = Cómo se llama (vacío: ninguno)
# draft
programme-cold = Minutos en frío
# draft
programme-warm = Minutos en caliente
# draft
programme-mass = Masa máxima, g
# draft
programme-load = Cargar, minutos
# draft
programme-unload = Sacar, minutos
# draft
programme-cool = Enfriar, minutos
# draft
programme-cost-cold = Cuesta en frío, céntimos
# draft
programme-cost-warm = Cuesta en caliente, céntimos
# draft
programme-drying = Secado
# draft
programme-wrapped = Admite juegos en bolsas
# draft
drying-is-none = ninguno: para usar enseguida
# draft
drying-is-short = corto
# draft
drying-is-full = completo
# draft
rules-title = Lo que vale para todo plan
# draft
rules-how = Tiempos y qué va primero
# draft
rules-passive = Los juegos lavados secan antes de empacar, minutos
# draft
rules-immediate = Un juego sin secado se abre en, minutos
# draft
rules-order = Qué va primero
# draft
order-salon = Nadie espera; lo que queda de noche está seco antes de ahorrar
# draft
order-comparing = El orden publicado, para comparar
# draft
figures-typical = típico, hasta que ponga el suyo
# draft
figures-keep = Guardar estas cifras
# draft
line-visit-booked = Reservada para { $at }: { $service }.
# draft
line-visit-moved = Una visita pasa a { $at }.
# draft
line-visit-is = Una visita es para { $service }.
# draft
line-visit-late = Una visita empieza { $count } min más tarde.
# draft
line-visit-off = Una visita fue anulada.
# draft
line-visit-missed = Un cliente no vino.
# draft
line-shift = { $sign } trabaja de { $from } a { $to }.
# draft
line-shift-ended = Se quitó un horario.
# draft
line-closed = Cerrado el { $day }.
# draft
line-open-again = Abierto el { $day }, después de todo.
# draft
line-key = Se creó una clave para reconocer calendarios.
# draft
line-service = Servicio { $service }: { $count } min, necesita { $needs }.
# draft
line-service-ended = { $service } ya no se ofrece.
# draft
line-learnt = Una frase en los títulos significa { $service }.
# draft
line-learnt-no-visit = Una frase en los títulos significa: ningún cliente.
# draft
line-kind-figures = Cifras propias para { $kind }.
# draft
line-machine-figures = Programas propios para { $machine }.
# draft
line-day-rules = Se fijó lo que vale para todo plan.
# draft
line-plan = Se aceptó un plan de { $count ->
    [one] una tanda
   *[other] { $count } tandas
}.
# draft
line-implement-set = Instrumento { $what }: { $length } × { $width }, { $mass }.
# draft
line-implement-ended = { $what } ya no se usa.
# draft
line-set-of = Un juego { $kind } es { $pieces }.
# draft
line-pouch-set = Tamaño de bolsa { $what }: { $width } × { $length }.
# draft
line-pouch-ended = El tamaño de bolsa { $what } ya no se tiene.
# draft
line-inside-set = Se midió el interior de { $machine }: { $count ->
    [one] una bandeja
   *[other] { $count } bandejas
}.
# draft
line-tray-weighed = Bandeja pesada: { $grams } con { $sets }.
# draft
line-programme-set = { $programme } en { $machine }, según su manual: { $temperature } durante { $hold } s, { $count } min de secado.
# draft
refused-no-calendar = Este archivo no es un calendario ni una tabla de citas que se pueda leer.
    .do = Expórtelo otra vez como .ics, o como tabla con fecha, hora y servicio.
# draft
refused-one-calendar = Un calendario cada vez.
    .do = Vuelva y elija un archivo.
# draft
refused-no-such-service = Este libro no conoce tal servicio.
# draft
refused-no-such-visit = Este libro no conoce tal visita.
# draft
refused-visit-over = Esa visita ya fue anulada o no vino.
# draft
refused-too-late = Una visita se retrasa { $most } min como máximo.
    .do = Muévala en el calendario o resérvela de nuevo.
# draft
refused-off-in-calendar = Esa visita viene de un calendario.
    .do = Anúlela allí y traiga el archivo otra vez.
# draft
refused-phrase = Estas palabras no se pueden aprender.
    .do = Vuelva y escriba unas palabras que signifiquen el servicio.
# draft
refused-said-already = Eso ya se dijo.
# draft
refused-service-taken = Ya hay un servicio { $word }.
    .do = Vuelva y elija otra palabra.
# draft
refused-no-programme = Una máquina necesita al menos un programa.
# draft
refused-shift = Ese horario no encaja.
    .do = Vuelva: desde antes que hasta, la comida dentro, doce semanas como máximo.
# draft
refused-no-such-shift = Este libro no conoce tal horario.
# draft
titles-ask = ¿Qué juegos necesitan estas?
# draft
titles-which = Significan
# draft
own-title = Cuántos juegos tener
# draft
own-none = No hay día con que calcular
# draft
own-none-do = Anote visitas para los próximos días, o traiga un calendario: el día más lleno de la semana se vive muchas veces.
# draft
own-how = Calculado, no medido: el día más lleno, { $day }, vivido { $days } veces con lo que pueda pasar.
# draft
own-kind = { $kind }: ahora { $owned }
# draft
own-now = Con { $owned }, nadie espera en { $share } de 100 días ({ $low } a { $high }).
# draft
own-plot = Días de 100 en que nadie espera, según los juegos: { $kind }
# draft
own-axis = juegos (anillo: ahora)
# draft
own-numbers = Lo mismo en números
# draft
own-enough = { $owned } bastarían en 95 de 100 días.
# draft
own-enough-now = Lo que hay basta: { $owned } alcanzan en 95 de 100 días.
# draft
own-never-enough = Solo con más de estos no se llega a 95 días buenos de 100: falta otra cosa.
# draft
own-planned = Comprobado: { $days } de estos días se planearon también, sabiendo antes lo que viene. Con plan funcionan { $planner }, sin saberlo { $policy }.
# draft
own-buy = Qué más daría tiempo
# draft
own-buy-set = Un juego más, { $kind }:
# draft
own-buy-machine = Otra máquina como la primera:
# draft
own-buy-lunch = Una comida { $count } min más larga, con una persona atrás:
# draft
own-gain = { $days } días buenos más al año ({ $low } a { $high }), { $clients } clientes menos esperan, { $money } al año.
# draft
own-no-gain = no se ve ninguna ganancia.
# draft
own-prices = El dinero al año es lo que cuestan los clientes que esperan, menos lo que se paga cada día. Supuesto: { $waiting } por cliente que espera, { $lunch } al día por la comida, { $days } días de trabajo. Un juego cuesta { $set } una vez, una máquina { $machine }.
# draft
own-assumed = De qué están hechos los días
# draft
own-walk-ins = Por cada 100 visitas entran { $share } sin cita, y se quedan si alguien está libre pronto.
# draft
own-no-shows = { $share } de 100 clientes no vienen.
# draft
own-late = { $share } de 100 clientes llegan tarde, { $late } min como máximo.
# draft
own-overruns = { $share } de 100 visitas duran más, { $longer } min como máximo.
# draft
own-failed = { $share } de 100 tandas hay que repetirlas.
# draft
own-wet = { $share } de 100 cargas secadas salen mojadas y empiezan de nuevo.
# draft
own-assumption = (supuesto)
# draft
own-counted = (contado aquí, de { $of })
# draft
own-begin = Al empezar el día todos los juegos están listos, también los de más. Las máquinas fuera de uso no cuentan.

## What goes in
# draft
goes-in-title = Lo que entra
# draft
goes-in-sets = Juegos y sus bolsas
# draft
goes-in-sets-how = De qué se compone un juego. Un juego es lo que va en una bolsa.
# draft
grams = { $grams }
# draft
bag-show = Ver su bolsa
# draft
scale-title = Una bandeja llena en la báscula
# draft
scale-how = Pese una vez una bandeja llena, fría y seca. Nadie tiene que pesar pieza por pieza.
# draft
scale-grams = Todo junto, gramos
# draft
scale-empty = La bandeja sola, gramos (0 si la báscula se puso a cero con ella)
# draft
scale-open = abiertos, sin bolsas
# draft
implements-title = Implementos
# draft
implements-how = Cifras típicas hasta que usted dé las suyas. La palabra de su fabricante va primero.
# draft
implement-add = Añadir un implemento
# draft
implement-end = Ya no está aquí
# draft
implement-word = Cómo lo llama
# draft
implement-form = Forma
# draft
implement-length = Largo, mm
# draft
implement-width = Ancho en la bolsa, con la bisagra abierta, mm
# draft
implement-thick = Grosor, mm
# draft
implement-mass = Masa de uno, gramos
# draft
implement-material = Hecho de
# draft
implement-is = Es
# draft
implement-hinged = con bisagra
# draft
implement-hollow = hueco: con un canal o una cavidad
# draft
implement-single = para un solo cliente
# draft
implement-steam = Al vapor
# draft
implement-ultrasonic = Al baño de ultrasonido
# draft
implement-most-c = Resiste hasta, °C
# draft
pouch-sizes-title = Tamaños de bolsa
# draft
pouch-sizes-how = Mida una bolsa vacía: de lado a lado y del fondo a la línea de pliegue.
# draft
pouch-size-add = Añadir un tamaño
# draft
pouch-size-end = Ya no se usa
# draft
pouch-size-word = Cómo la llama
# draft
pouch-size-width = De lado a lado, mm
# draft
pouch-size-length = Del fondo al pliegue, mm
# draft
pouch-size-seam = Ancho de la costura, mm
# draft
pouch-size-fold = Libre bajo el pliegue, mm
# draft
pouch-size-mass = Masa de una, gramos
# draft
inside-title = Cámara, bandejas, patrón
# draft
inside-how = Mida por dentro, en milímetros. El patrón es el del manual de la máquina.
# draft
inside-chamber = Cámara
# draft
chamber-round = redonda
# draft
chamber-box = caja
# draft
inside-across = Ancho, mm
# draft
inside-high = Alto, mm
# draft
inside-depth = De la puerta al fondo, mm
# draft
tray-name = Bandeja { $tray }
# draft
tray-width = Ancho, mm
# draft
tray-depth = De la puerta al fondo, mm
# draft
tray-height = Altura libre, mm
# draft
tray-mass = Vacía, gramos
# draft
rack-title = Soporte
# draft
rack-places = Lugares (0: no hay)
# draft
rack-pitch = De un lugar al siguiente, mm
# draft
rack-height = Altura para una bolsa, mm
# draft
inside-pattern = Cómo van las bolsas
# draft
inside-face = Qué lado va arriba
# draft
inside-wall = Libre hasta el borde, mm
# draft
inside-between = Libre entre dos bolsas, mm
# draft
manual-page = Página del manual
# draft
programme-set = Temperatura fijada, °C
# draft
programme-hold = Tiempo a temperatura, segundos
# draft
programme-pulses = Pulsos de vacío antes
# draft
programme-dry-min = Secado, minutos
# draft
programme-dry-kpa = Presión más baja al secar, kPa absolutos (vacío: sin bomba)
# draft
programme-for = Su manual permite
# draft
programme-for-pouches = bolsas
# draft
programme-for-hollow = piezas huecas
# draft
programme-most-pouched = Máximo en bolsas, gramos, según el manual
# draft
programme-most-open = Máximo sin bolsas, gramos, según el manual
# draft
tray-show = Ver las bandejas
# draft
refused-no-such-implement = Aquí no hay tal implemento.
    .do = Añádalo antes, o déjelo fuera.
# draft
refused-implement-in-set = Un juego de { $kind } lo lleva.
    .do = Sáquelo antes de ese juego.
# draft
refused-last-pouch-size = Queda al menos un tamaño de bolsa.
    .do = Añada antes otro tamaño.
# draft
refused-tray-lighter = La bandeja llena debe pesar más que la vacía.
    .do = Pésela otra vez, fría y seca.
# draft
refused-implement-measure = Una medida es nada o más de dos metros.
    .do = Mídalo como va en la bolsa, en milímetros.
# draft
refused-implement-mass = Un implemento pesa de una décima de gramo a 20 kg.
    .do = Péselo, o deje la cifra típica.
# draft
refused-implement-heat = Lo más que resiste va de 40 a 300 °C.
    .do = Su fabricante lo dice.
# draft
refused-inside-measure = Una medida es nada o más de dos metros.
    .do = Mida por dentro, en milímetros.
# draft
refused-inside-trays = Una máquina tiene de una a doce bandejas.
    .do = Ponga al menos una bandeja.
# draft
refused-inside-no-rack = De canto hace falta un soporte.
    .do = Diga cuántos lugares tiene, o elija otro patrón.
# draft
refused-inside-too-large = Estas bandejas no entran en esta cámara.
    .do = Mida las dos por dentro, en milímetros.
# draft
refused-pouch-size = Esta bolsa no tiene cara entre costuras y pliegue.
    .do = Mida una bolsa vacía, en milímetros.
# draft
tray-title = En las bandejas
# draft
tray-print = Imprimir para la puerta (A5)
# draft
tray-all-in = Entran todas: { $count }
# draft
tray-some-in = Entran { $count } de { $of }. Más de { $most } no pueden.
# draft
tray-left = Para la próxima vez:
# draft
tray-unknown = No se conoce bolsa para: { $what }
# draft
tray-empty = Queda vacía.
# draft
tray-from-top = Bandeja { $tray } desde arriba
# draft
tray-mass-is = { $grams } g con la bandeja.
# draft
tray-free = { $free } libres hasta el borde.
# draft
tray-desc = Encima: { $what }
# draft
paper-up = lado de papel arriba
# draft
film-up = lado transparente arriba
# draft
paper-right = papel a la derecha
# draft
film-right = transparente a la derecha
# draft
lies-over = se monta 2,5 cm
# draft
fold-free = libre para el pliegue
# draft
door = puerta
# draft
pattern-flat = planas, una capa
# draft
pattern-on-edge = de canto en un soporte
# draft
pattern-overlapped = montadas 2,5 cm
# draft
pattern-flat-how = Planas, una capa, nada encima de otra, nada contra la pared.
# draft
pattern-on-edge-how = De canto, una en cada lugar. Nada se apoya en la pared.
# draft
pattern-overlapped-how = Cada una sobre la siguiente unos 2,5 cm: papel con papel, transparente con transparente. Práctica común; no se encontró fuente.
# draft
pattern-page = Según el manual de la máquina, página { $page }.
# draft
pattern-no-page = Fijado aquí; no se conoce la página del manual.
# draft
pattern-typical = Un espacio típico, no el suyo: mire el manual y mida.
# draft
face-paper = papel
# draft
face-film = lado transparente
# draft
tray-sheet-title = Máquina { $machine }: cómo entra esta carga
# draft
tray-scale = Escala 1 : { $ratio }
# draft
tray-total = Todo, sin bandejas: { $grams } g
# draft
bag-title = Bolsa: { $kind }
# draft
bag-size = { $size }, { $width } × { $length }
# draft
bag-full = Se usa { $full } % de su cara; 75 % es el máximo.
# draft
bag-picture = Cómo van las piezas en la bolsa
# draft
bag-split-metals = Más de una bolsa: estos no deben tocarse ({ $metals }).
# draft
bag-split-full = Más de una bolsa: una quedaría demasiado llena.
# draft
bag-refused-single = de un solo uso, a la basura
# draft
bag-refused-steam = nunca al vapor
# draft
bag-refused-large = demasiado grande para cualquier bolsa
# draft
bag-ask-maker = al vapor solo si su fabricante lo dice
# draft
bag-open = Bisagras abiertas. Ninguna pieza toca a otra.
# draft
bag-dry = Lavado, seco, revisado, aceitado. El acero mojado se oxida en la bolsa.
# draft
bag-mark = La marca se ve por el lado transparente. Doble por la línea, saque el aire.
# draft
metal-stainless = acero inoxidable
# draft
metal-plated = acero cromado o niquelado
# draft
metal-carbon = acero al carbono
# draft
metal-aluminium = aluminio
# draft
metal-carbide = carburo
# draft
metal-diamond = diamante
# draft
material-stainless-420 = acero inoxidable templado
# draft
material-stainless-304 = acero inoxidable
# draft
material-plated-steel = acero cromado o niquelado
# draft
material-carbon-steel = acero al carbono
# draft
material-aluminium = aluminio
# draft
material-carbide = carburo
# draft
material-diamond = diamante
# draft
material-ceramic = cerámica
# draft
material-glass = vidrio
# draft
material-silicone = silicona
# draft
material-polypropylene = plástico
# draft
material-fibre = madera, papel, espuma
# draft
stands-yes = sí
# draft
stands-ask-the-maker = solo si su fabricante lo dice
# draft
stands-never = nunca
# draft
form-nippers = alicate
# draft
form-scissors = tijeras
# draft
form-clippers = cortaúñas
# draft
form-tweezers = pinzas
# draft
form-stick = varilla
# draft
form-bit = fresa
# draft
form-block = bloque o caja
# draft
form-file = lima
# draft
implement-cuticle-nipper = alicate de cutícula
# draft
implement-toenail-nipper = alicate de uñas del pie
# draft
implement-nail-clipper = cortaúñas
# draft
implement-toenail-clipper = cortaúñas de pie
# draft
implement-cuticle-scissors = tijeras de cutícula
# draft
implement-tweezers = pinzas
# draft
implement-pusher = empujador
# draft
implement-curette = cureta
# draft
implement-nail-rasp = lima de metal
# draft
implement-foot-file-handle = mango de lima de pies
# draft
implement-carbide-bit = fresa de carburo
# draft
implement-diamond-bit = fresa de diamante
# draft
implement-ceramic-bit = fresa de cerámica
# draft
implement-mandrel = mandril
# draft
implement-bit-holder = soporte de fresas
# draft
implement-handpiece = pieza de mano del torno
# draft
implement-glass-file = lima de vidrio
# draft
implement-plastic-brush = cepillo
# draft
implement-sanding-band = banda de lija
# draft
implement-wood-stick = palito de madera
# draft
implement-toe-foam = separador de espuma
# draft
implement-paper-file = lima de papel
# draft
implement-buffer = pulidor
# draft
implement-foot-file-pad = repuesto de lima de pies
# draft
pouch-word-tiny = muy chica
# draft
pouch-word-small = chica
# draft
pouch-word-middle = mediana
# draft
pouch-word-large = grande
# draft
pouch-word-huge = muy grande
# draft
implement-plated-clipper = cortaúñas cromado
# draft
implement-rubber-handle-pusher = empujador con mango de goma
# draft
chemical-bleach = lejía
# draft
chemical-iodine = yodo
# draft
chemical-metal-chlorides = cloruros metálicos
# draft
chemical-acid = ácido, descalcificador
# draft
chemical-alkali = álcali fuerte
# draft
chemical-acetone = acetona
# draft
chemical-alcohol = alcohol
# draft
chemical-peroxide = peróxido
# draft
chemical-quaternary-ammonium = amonio cuaternario
# draft
watch-chemicals = Lejos de: { $what }. Si pasó: enjuague enseguida.
# draft
watch-single-use = Para un solo cliente: a la basura, no se lava ni se embolsa.
# draft
watch-never-steam = Nunca al vapor.
# draft
watch-ask-steam = Al vapor solo si su fabricante lo dice.
# draft
watch-never-ultrasonic = Nunca al baño de ultrasonido.
# draft
watch-ask-ultrasonic = Al ultrasonido solo si su fabricante lo dice.
# draft
watch-rusts = El acero al carbono se oxida en vapor.
# draft
watch-heat = Resiste solo { $celsius }: muy poco para un ciclo de 134 °C.
# draft
watch-apart = Aparte de otros metales: { $metal } solo va con { $metal }.
# draft
watch-hinge = Bisagra abierta, en el baño y en la bolsa.
# draft
watch-hollow = Hueco: necesita una máquina que saque el aire primero.

## Which programme, and will it be dry
# draft
propose-line = Se propone: { $cycle }. { $why }
# draft
propose-none = Ningún programa de esta máquina sirve para esta carga.
# draft
propose-others = Por qué no los otros
# draft
propose-unknown = Hay juegos sin describir: su masa no está en las cifras.
# draft
why-quickest-now = Sin bolsa, para usar enseguida: el más rápido.
# draft
why-quickest-dries = El más rápido que queda bajo su límite de secado.
# draft
why-longer-weight = Demasiado pesada para un secado más corto.
# draft
why-longer-piece = Una pieza pesada pide el secado más largo.
# draft
why-longest-unknown = Aún no se sabe qué sale seco aquí: el secado más largo.
# draft
no-drying-pouches = No seca, y las bolsas deben salir secas.
# draft
no-drying-shelf = No seca: no es para el estante.
# draft
no-too-heavy-maker = Pesa más de lo que permite el fabricante.
# draft
no-too-heavy-dry = Pesa más de lo que sale seco aquí.
# draft
no-too-hot = Más caliente de lo que resiste una pieza.
# draft
no-not-for-pouches = Su manual no dice que sea para bolsas.
# draft
no-not-for-hollow = Su manual no dice que sea para piezas huecas.
# draft
no-gravity-hollow = Piezas huecas, y no se sabe de un vacío que saque el aire.
# draft
no-gravity-times = Sin vacío, las bolsas necesitan 30 min a 121 °C o 15 min a 132 °C (CDC 2008).
# draft
no-not-in-time = Termina tarde.
# draft
change-split = Divídala: a lo más { $grams } g por vez en { $cycle }.
# draft
change-unpouched = O sin bolsas en { $cycle }, para usar enseguida.
# draft
change-take-out = Saque lo que no resiste el calor de { $cycle }.
# draft
change-later = O espere: { $cycle } tarda { $minutes } min.
# draft
load-weighs = Esta carga: { $grams } g.
# draft
limit-maker-only = { $cycle }: el límite del fabricante es { $grams } g. Nadie ha mirado aún.
# draft
limit-maker = { $cycle }: vale el límite del fabricante, { $grams } g. { $count } miradas, { $wet } mojadas.
# draft
limit-looks = { $cycle }: aquí salen secos unos { $grams } g ({ $low } a { $high }), según { $count } miradas, { $wet } mojadas.
# draft
limit-guess = { $cycle }: aún nadie sabe cuánto sale seco aquí. Busque el límite en el manual; las miradas enseñan el resto.
# draft
dry-chance = Probabilidad de que salga mojada, calculada: { $percent } %.
# draft
run-water = Agua, calculada: unos { $middle } ml ({ $low } a { $high }); una máquina chica suele gastar unos 90. Diez veces así: { $ten } litros del tanque.
# draft
start-against = Empezar contra el consejo. Queda en el registro.
# draft
start-picture = Cómo va en las bandejas
# draft
refused-no-drying = Este programa no seca. Las bolsas salen mojadas.
    .safe = No se anotó nada.
    .do = Elija uno que seque. Si ya está en marcha, vuelva y marque que empiece de todos modos.
# draft
refused-gravity-hollow = Piezas huecas, y no se sabe que este programa les saque el aire.
    .safe = No se anotó nada.
    .do = Elija uno que su manual permita para piezas huecas. Si ya está en marcha, vuelva y marque que empiece de todos modos.
# draft
refused-too-heavy = Pesa más de lo que permite el fabricante ({ $most } g).
    .safe = No se anotó nada.
    .do = Saque algunas bolsas. Si ya está en marcha, vuelva y marque que empiece de todos modos.

## What goes in, more
# draft
bag-refused-measure = sus medidas no pueden ser

## On the page of the machine
# draft
machine-dries = Lo que sale seco

## On edge
# draft
rack-mass-is = { $grams } g con el soporte.

## Implements
# draft
implement-change = Cambiar

## Air
# draft
propose-air-unknown = Nadie dijo cómo esta máquina saca el aire; se toma como una sin vacío.

## Against the advice; what is left
# draft
tray-machine-busy = Esta máquina está en marcha. La carga entra cuando esté vacía.
# draft
refused-no-room = No todo cabe en las bandejas de esta máquina.
    .safe = No se anotó nada.
    .do = Saque algunas bolsas: el dibujo dice cuáles. Si ya está en marcha, vuelva y marque que empiece de todos modos.
# draft
refused-piece-inside = Esto no debe entrar: { $word }.
    .safe = No se anotó nada.
    .do = Sáquelo del juego. Si ya está en marcha, vuelva y marque que empiece de todos modos.
# draft
refused-too-hot = Una pieza no resiste el calor de este programa.
    .safe = No se anotó nada.
    .do = Sáquela, o elija un programa más frío. Si ya está en marcha, vuelva y marque que empiece de todos modos.
# draft
refused-not-for-pouches = Este programa no es para bolsas.
    .safe = No se anotó nada.
    .do = Elija uno que su manual permita para bolsas. Si ya está en marcha, vuelva y marque que empiece de todos modos.
# draft
refused-below-times = Su tiempo o calor está por debajo del mínimo publicado.
    .safe = No se anotó nada.
    .do = Elija otro programa, o revise lo anotado. Si ya está en marcha, vuelva y marque que empiece de todos modos.
# draft
no-below-times = Su tiempo o calor está por debajo del mínimo publicado.
# draft
refused-unfit = Una cifra está fuera de lo posible.
    .do = Revísela: { $why }
# draft
refused-not-described = Nadie dijo de qué se compone este juego: { $kind }.
    .do = Dígalo antes, arriba en esta página.
# draft
refused-weight-odd = Está lejos de lo que pesan esos juegos: unos { $grams } g.
    .do = Cuente los juegos y pese otra vez. Si es así, describa antes los implementos.
# draft
goes-in-nobody-said = nadie dijo de qué se compone
# draft
goes-in-pieces-typical = piezas habituales, hasta que diga las suyas
# draft
left-water = Agua que queda al final, calculada: unos { $middle } g, a lo más { $high } g en diecinueve de veinte casos.
# draft
load-typical = Las masas son típicas: ponga una bandeja llena en la báscula.
# draft
looks-left-out = { $count } miradas no se pudieron contar: nadie dijo qué había dentro.

## Drying not known
# draft
why-drying-unknown = Aún no se sabe qué sale seco aquí.

## Held bits
# draft
form-holder = bloque para fresas
# draft
bag-held = En el soporte: { $what }

## The strip on every page
# draft
not-joined = Sin conexión con el equipo del salón desde las { $at }. Lo que ve es de entonces.
# draft
strip-running = Tandas en una máquina ahora
# draft
strip-clock = POR RELOJ
# draft
strip-clock-usual = POR RELOJ: suele tardar { $low } a { $high } min
# draft
strip-measured = MEDIDO: { $phase }, { $temperature }.
# draft
strip-measured-only = MEDIDO: { $temperature }.
# draft
strip-held = A temperatura hasta ahora { $held }.
# draft
strip-word = Último aviso hace { $seconds } s
# draft
strip-silent = Sin aviso desde hace { $seconds } s.
# draft
strip-silent-long = Sin aviso desde hace { $minutes } min.
# draft
phase-heating-up = calentando
# draft
phase-air-out = sacando aire
# draft
phase-at-temperature = a temperatura
# draft
phase-steam-out = soltando vapor
# draft
phase-drying = secando
# draft
phase-air-in = entrando aire

## The wall
# draft
wall-title = En la pared
# draft
wall-front-title = En la pared donde esperan clientes
# draft
go-wall = Mostrar en la pared
# draft
go-wall-front = Mostrar donde esperan clientes
# draft
wall-bin = Cubo: unos { $count }
# draft
wall-ends = hasta ~{ $at }
# draft
wall-runs = en marcha
# draft
wall-short = { $time }: faltan { $count } { $kind }
# draft
wall-free = libre
# draft
wall-look = mírela
# draft
wall-start-now = Inicie máquina { $machine } ahora
# draft
wall-start-at = Inicie máquina { $machine } a las { $time }
# draft
wall-stop-some = { $count ->
    [one] 1 bolsa de la máquina { $machine }
   *[other] { $count } bolsas de la máquina { $machine }
}

## Upkeep and counter
# draft
line-upkeep = Se hizo una tarea de cuidado.
# draft
line-counter = Se anotó algo en el mostrador.

## Screens that are let in, what is kept while cut off, and two at once
# draft
screens-title = Pantallas
# draft
screens-let-in = Dejar entrar una pantalla
# draft
screens-how = Un teléfono o una tableta entra una sola vez, con un código que aparece aquí diez minutos.
# draft
screens-code = Mostrar un código
# draft
screens-new-code = Otro código
# draft
screens-until = Vale hasta las { $at }, para una pantalla.
# draft
screens-square = Código cuadrado con la dirección para la pantalla nueva
# draft
screens-trust-first = Un teléfono nuevo abre primero esta dirección, para confiar en el equipo:
# draft
screens-type = Escanee el cuadrado con la pantalla nueva, o abra allí esta dirección y escriba el código:
# draft
screens-only-here = Ahora solo este equipo llega al programa. Inícielo con --secure 0.0.0.0:7443 y entonces podrán entrar otras pantallas.
# draft
screens-not-here = Las pantallas entran y salen en el equipo del salón, en un escritorio o con la seña de quien está a cargo.
# draft
screens-known = Pantallas que pueden entrar
# draft
screens-none = Ninguna todavía. Este equipo no necesita código.
# draft
screens-since = desde
# draft
screens-heard = última señal
# draft
screens-not-heard = sin señal desde que se inició el programa
# draft
screens-let-go = Quitar
# draft
screen-phone = Teléfono
# draft
screen-tablet = Tableta
# draft
screen-wall = Pared: solo muestra
# draft
screen-desk = Escritorio
# draft
pair-title = Dejar entrar esta pantalla
# draft
pair-how = En el equipo del salón abra Ajustes, luego Pantallas, y toque «Mostrar un código». Escriba aquí sus seis signos.
# draft
pair-code = Seis signos
# draft
pair-what = ¿Qué es esta pantalla?
# draft
pair-name = Un nombre, si quiere
# draft
pair-go = Entrar
# draft
pair-wrong = Ese no es el código. No se hizo nada. Mire el equipo y escríbalo otra vez.
# draft
pair-void = Demasiados intentos. Ese código ya no vale. Pida otro en el equipo.
# draft
pair-shut = Ahora no hay ningún código. Ya se usó o se acabó su tiempo. Pida uno en el equipo.
# draft
pair-go-safe = Esta dirección no es segura. Primero confíe en el equipo, luego siga en la dirección segura.
# draft
pair-plain = Lo que pasa por esta dirección lo pueden leer otros en la misma red, y esta pantalla no guarda toques si pierde la conexión. Ambas cosas mejoran si el equipo se inicia con una dirección segura.
# draft
trust-title = Confiar en el equipo
# draft
trust-how = Cómo hacer que una pantalla confíe
# draft
trust-why = El equipo hizo su propio certificado. La pantalla que confía en él tiene una página segura: funciona la cámara y se guardan los toques si pierde la conexión.
# draft
trust-match-title = Primero compare
# draft
trust-match = Confíe solo si estos signos son iguales en la pantalla del propio equipo (Ajustes, Pantallas) y en el teléfono. Si difieren, pare y pregunte a quien está a cargo.
# draft
trust-vouches = Con él este equipo responde por sus propios nombres y por direcciones dentro del salón, y por nada más.
# draft
trust-fingerprint = Huella (SHA-256)
# draft
trust-take = Tomar el certificado
# draft
trust-profile = Teléfonos que cargan un perfil
# draft
trust-profile-1 = Abra el certificado. El teléfono dice que se cargó un perfil.
# draft
trust-profile-2 = Abra los ajustes del teléfono. El perfil cargado está arriba: instálelo.
# draft
trust-profile-3 = Luego busque los ajustes de confianza de certificados y active este. Sin este último paso no cuenta.
# draft
trust-storage = Teléfonos que instalan desde su memoria
# draft
trust-storage-1 = Tome el certificado; el teléfono lo guarda.
# draft
trust-storage-2 = En los ajustes busque «certificado» y elija instalar un certificado de CA.
# draft
trust-storage-3 = El teléfono avisa; es correcto. Siga solo después de comparar y elija el archivo guardado.
# draft
trust-computer = Computadoras
# draft
trust-computer-1 = En los ajustes del navegador busque «certificados», luego autoridades, luego importar.
# draft
trust-computer-2 = Elija el archivo y permítalo solo para páginas web.
# draft
trust-then = Después abra
# draft
trust-back = Para quitarlo, borre el certificado en los mismos ajustes.
# draft
trust-none = Este equipo se inició sin dirección segura. Inícielo con --secure 0.0.0.0:7443.
# draft
refused-not-here = Las pantallas entran y salen en el equipo del salón, en un escritorio o con la seña de quien está a cargo.
# draft
refused-no-such-screen = Esa pantalla ya se quitó.
# draft
refused-nothing-to-see = En este lugar del registro no hay nada que revisar.
# draft
refused-kept-too-long = Esto se guardó aquí más de tres días y llega tarde para escribirse solo.
    .do = Avise a quien está a cargo; se puede anotar después a mano.
# draft
kept-title = Sin conexión con el equipo
# draft
kept-about = Esta pantalla guarda estas páginas y la lista de bolsas. Lo que toque se guarda aquí y se envía cuando vuelve el equipo.
# draft
kept-nothing-else = Aquí no se guarda nada de los clientes.
# draft
kept-none = No hay conexión con el equipo y esta página no se guarda aquí. Estas sí:
# draft
kept-no-act = No hay conexión con el equipo y esto no se puede guardar aquí. No se hizo nada. Repítalo cuando vuelva el equipo.
# draft
kept-good = Lista, según la última lista
# draft
kept-list = La lista es de las { $at }.
# draft
kept-cannot-know = Aquí no se puede saber si una bolsa se apartó después.
# draft
kept-unknown = Este código no está en la lista: se abrió antes, es más nuevo que la lista o no es de aquí.
# draft
kept-used = Esta ya se usó aquí, o se pasó su hora.
# draft
kept-here = Guardado aquí: { $what }
# draft
kept-undone = Retirado. No se envía nada.
# draft
kept-read = Lo he leído
# draft
kept-waits = { $what }, { $at }: espera al equipo
# draft
kept-stranger = Esta pantalla se quitó. Lo que guarda sigue aquí y se envía cuando vuelva a entrar.
# draft
kept-count = { $count ->
    [one] Guardo aquí sus toques: 1 en espera.
   *[other] Guardo aquí sus toques: { $count } en espera.
}
# draft
kept-wash = lavado
# draft
kept-pack = embolsado; las etiquetas salen cuando vuelva el equipo
# draft
kept-start = máquina puesta en marcha
# draft
kept-unload = tanda sacada
# draft
kept-look = revisado
# draft
kept-set-aside = apartado
# draft
kept-open = abierta en la silla
# draft
kept-apart = desmontado
# draft
kept-machine-out = máquina fuera de uso
# draft
meanwhile-title = Otra persona actuó también
# draft
meanwhile-opened-title = Abierta antes de poder avisar
# draft
meanwhile-opened = { $code }: abierta { $at }, { $chair }, { $who }.
# draft
meanwhile-opened-do = No siga con este juego. Póngalo con los usados, tome otro y avise a quien está a cargo.
# draft
meanwhile-aside = { $what }: apartado { $at }, { $who }. { $why }. Sigue apartado.
# draft
meanwhile-twice = { $code } ya se había abierto { $at }, { $who }.
# draft
meanwhile-not-released = { $code } no estaba liberada.
# draft
meanwhile-released-title = Apartado mientras tanto
# draft
meanwhile-released = { $what }: liberado { $at }, { $who }.
# draft
meanwhile-released-do = Ambas cosas están en el registro. Vale la más segura: no las use.
# draft
meanwhile-unloaded = { $what }: sacado { $at }.
# draft
meanwhile-both = Lo suyo también quedó escrito.
# draft
meanwhile-asks = Visto. Quien está a cargo: toque su seña.
# draft
meanwhile-nobody = nadie firmó
# draft
chair-some = una silla
# draft
line-station-in = Entró una pantalla: { $what }.
# draft
line-station-out = Se quitó una pantalla.
# draft
line-seen = Leído: entrada { $seq }, donde dos hicieron cosas distintas.

## The counter: hand over, correct, from paper, gaps, people
# draft
go-hand-over = ENTREGAR EL TURNO
# draft
hand-over-title = Entrega del turno
# draft
hand-over-give = Cinco líneas para quien sigue
# draft
hand-over-alone = Aquí trabaja una sola persona
# draft
hand-over-alone-how = No hay nada que entregar. Añada una segunda firma en la página de ajustes.
# draft
hand-over-1 = 1 En marcha
# draft
hand-over-2 = 2 En espera
# draft
hand-over-3 = 3 Apartado
# draft
hand-over-4 = 4 Vigilar
# draft
hand-over-5 = 5 Si una máquina se para
# draft
hand-over-none = Nada
# draft
hand-over-drying = Juegos secándose en la rejilla
# draft
hand-over-dries = Secándose en la rejilla: { $count }
# draft
hand-over-note = Algo que vigilar, si quiere
# draft
hand-over-to = A una persona
# draft
hand-over-whoever = quien lo tome
# draft
hand-over-asks = Yo entrego: toque su firma
# draft
take-over-asks = Lo tengo: toque su firma
# draft
go-take-over = Verlo y tomarlo
# draft
hand-over-from = { $sign } entrega desde { $at }.
# draft
hand-over-for = A: { $sign }
# draft
hand-over-has = { $sign } lo tiene desde { $at }.
# draft
hand-over-check = Por revisar: { $run }
# draft
hand-over-runs = { $run }, bolsas: { $count }, pocas tandas para saber el final
# draft
hand-over-runs-until = { $run }, bolsas: { $count }, suele acabar a las { $at }
# draft
hand-over-jar = Frasco { $jar }: cambiar antes de { $at }
# draft
hand-over-not-fine = { $chore }: la última vez no estaba bien
# draft
if-no-machine = No hay máquina en uso: use lo listo y después juegos desechables.
# draft
if-only-machine = Si la máquina { $machine } se para: aparte su tanda, use lo listo y después juegos desechables.
# draft
if-machine-stops = Si la máquina { $machine } se para: aparte su tanda, embolse de nuevo, use la máquina { $other }.
# draft
nobody-has-it = Nadie lleva la parte de atrás
# draft
line-handed-over = Turno entregado a { $sign }. Secándose: { $count }.
# draft
line-taken-over = Turno tomado: lo tengo.
# draft
refused-alone = Aquí trabaja una sola persona: no hay a quién entregar.
# draft
refused-note-long = Una nota tiene como máximo { $most } caracteres.
# draft
refused-taken-already = Alguien ya lo tomó.
    .do = Mire en el registro quién lo tomó.
# draft
refused-not-offered = Esta no es la última entrega ofrecida.
    .do = Abra de nuevo la página ENTREGAR EL TURNO.
# draft
correct-title = Corregir una entrada
# draft
correct-key = Corregir
# draft
correct-was = Como se escribió
# draft
correct-is = Como fue en verdad
# draft
correct-stays = La entrada anterior queda en el registro, tachada, con la suya al lado.
# draft
correct-asks = Así fue: toque su firma
# draft
correct-chair = Silla
# draft
correct-inside = En la tanda: quite la marca a las que no estaban
# draft
correct-too = En espera: marque las que también estaban
# draft
correct-programme = El programa no se corrige aquí: el registro de la máquina dice qué corrió. En duda, aparte la tanda.
# draft
log-corrected = Corregido { $at }, { $sign }: { $what }
# draft
line-correction = Corrección: { $what }
# draft
line-run-corrected = { $run }: se corrigió lo que había dentro.
# draft
line-run-out = No estaba: { $what }.
# draft
line-run-put = También estaba: { $what }.
# draft
refused-not-correctable = Esta entrada no se corrige aquí.
    .do = Si algo no debe usarse, apártelo. Si un número está mal, cuente otra vez.
# draft
refused-nothing-corrected = No se cambió nada.
    .do = Cambie lo que estaba mal y toque su firma.
# draft
refused-correct-counts = Estos juegos se contaron o embolsaron después; la entrada ya no se corrige.
    .do = Cuente los juegos ahora y anótelo en la página de ajustes.
# draft
refused-correct-opened = Se escribió más sobre esta bolsa; la apertura ya no se corrige.
    .do = Si no debe usarse, apártela.
# draft
refused-correct-gone = La bolsa { $code } ya se liberó, abrió o apartó: sigue en su tanda para que un retiro la alcance.
    .do = Apártela si no estaba en la tanda.
# draft
refused-correct-failed = Esta tanda no llegó a sus números: la bolsa { $code } no se saca de ella.
    .do = Ábrala, lave otra vez, bolsa nueva, tanda nueva.
# draft
refused-correct-harder = Lo que añade es más difícil para el vapor que lo que se juzgó.
    .do = Hágalo de nuevo en otra tanda.
# draft
refused-future = Esa hora aún no ha llegado. Nadie puede haberlo visto.
    .do = Ponga el día y la hora como fueron, no después de ahora.
# draft
refused-end-before-start = Termina antes de empezar.
    .do = Mire las dos horas. Una tanda de noche necesita su propio día de final.
# draft
refused-later-machine-full = La máquina { $machine } tiene una tanda ahora; la del papel debe esperar.
    .do = Escríbala cuando la carga esté fuera.
# draft
refused-look-before-out = A esa hora la carga seguía en la máquina.
    .do = Mire otra vez la hora en el papel.
# draft
later-title = Del papel
# draft
later-how = En el orden de la hoja semanal. Ponga el día y la hora como están en el papel.
# draft
later-day = Día
# draft
later-time = Hora
# draft
later-start = Empezó a las
# draft
later-end = Terminó a las
# draft
later-asks = Como en el papel: toque su firma
# draft
later-wash = Lavado
# draft
later-run = Una tanda
# draft
later-look = Números y revisión de una tanda
# draft
later-open = Abierta en una silla
# draft
later-chore = Una tarea hecha
# draft
later-closed = Cerrado ese día
# draft
later-machine = Máquina
# draft
later-inside = Bolsas en ella
# draft
later-packed = Embolsadas en papel
# draft
later-packed-how = Las bolsas que el registro no conoce reciben ahora un código: escríbalo en ellas.
# draft
later-kind = Qué tipo de juego
# draft
later-no-look = Ninguna carga espera revisión.
# draft
later-look-how = Lo que dice el papel. Un no en el papel es un no aquí.
# draft
later-all-turned = Todas cambiaron
# draft
later-all-dry = Todas secas y enteras
# draft
later-inner-yes = Sí, llegó al punto final
# draft
later-which = Cuál no
# draft
later-code = Los cuatro símbolos de la bolsa
# draft
later-which-chore = Qué tarea
# draft
later-found = Estado
# draft
later-fine = Bien
# draft
later-not-fine = No está bien
# draft
log-print = Para imprimir
# draft
gap-nothing-written = No hay nada escrito de { $from } a { $to }.
# draft
gap-asks = ¿Por qué? Un toque. Queda visible con su motivo.
# draft
gap-closed = Cerrado
# draft
gap-holiday = Día festivo
# draft
gap-power = Sin luz
# draft
gap-nothing = Nada que hacer
# draft
gap-paper = En papel
# draft
gap-forgotten = Se olvidó
# draft
line-gap = Nada escrito de { $from } a { $to }: { $why }.
# draft
line-box-off = El equipo del salón estuvo apagado de { $from } a { $to }.
# draft
outage = Se fue la luz de { $from } a { $to }.
# draft
outage-do = La máquina { $machine } debe mostrar completo; si no, repita la tanda. Queda apartada hasta tener sus números y que una persona con firma lo levante.
# draft
line-counted-back = { $run }: recuento, { $count }.
# draft
line-no-code = Se abrió una bolsa sin código: { $kind }.
# draft
line-no-code-chair = Se abrió una bolsa sin código en la silla { $chair }: { $kind }.
# draft
line-exposure = Se anotó contacto con sangre.
# draft
line-exposure-chair = Se anotó contacto con sangre en la silla { $chair }.
# draft
line-speaks = { $sign } lee { $language }.
# draft
line-person-is = { $sign }: { $what }.
# draft
line-record-shows = El registro se escribe en { $language }, { $units }.
# draft
role-learns = aprende
# draft
role-charge = a cargo de máquinas y apartados
# draft
role-teaches = enseña
# draft
role-none = nada en particular
# draft
units-metric = °C, kPa, mm, g
# draft
units-us = °F, psi, in, oz
# draft
person-is = Idioma y papel
# draft
person-reads = Lee
# draft
person-reads-any = como la pantalla
# draft
person-roles = Aquí esta persona
# draft
person-is-do = Guardar
# draft
record-title = Cómo se escribe el registro
# draft
record-how = Para impresos: registro, etiquetas, hoja de bandeja, hoja semanal. Cada pantalla guarda su idioma.
# draft
record-language = Idioma del registro
# draft
record-units = Unidades
# draft
record-do = Guardar
# draft
shelf-aside = Apartar { $code }: no seguro
# draft
wipe-glass = Limpiar pantalla
# draft
wipe-says = Limpie ahora. Los toques no hacen nada.
# draft
week-title = Hoja semanal
# draft
week-how = Imprímala y cuélguela: funciona sin luz. Un cuadro: toca ese día. Cópiela después.
# draft
week-water = agua + desagüe
# draft
week-seal = junta limpia
# draft
week-washed = lavado: juegos, hora, firma
# draft
week-run = tanda { $run }
# draft
week-spore = esporas máquina { $machine }: puesta, resultado
# draft
week-jar-a = frasco A preparado
# draft
week-jar-b = frasco B preparado
# draft
week-bath = agua del ultrasonido cambiada
# draft
week-foil = prueba de papel aluminio (mes)
# draft
week-retired = retirado, fuera
# draft
week-odd = tarde o raro
# draft
week-back = quién llevó atrás
# draft
week-marks = Palomita: sí. Cruz: no, entonces NO USAR.

## The shelf and the sheet
# draft
shelf-not-sure = ¿No está seguro de una? Toque su código: se aparta.
# draft
week-run-first = tanda { $run }: ciclo, de–a, marcas, seca, quién

## Practice
# draft
cards-title = Tarjetas
# draft
cards-how = Nada de esto es real. Reparta una tarjeta, haga lo que pide en las otras páginas y termínela.
# draft
cards-clock = El reloj
# draft
cards-clock-shows = Marca { $at }, velocidad × { $times }.
# draft
cards-clock-how = Otra velocidad nunca lo hace saltar. Deshacer dura 30 segundos reales.
# draft
cards-times = × { $times }
# draft
cards-later = Media hora más tarde
# draft
cards-everyone = todos
# draft
cards-dealt = Repartida
# draft
cards-asked = Lo que se pide (para quien enseña)
# draft
cards-end = Terminar esta tarjeta
# draft
cards-deal = Repartir una tarjeta
# draft
cards-learner = A quién
# draft
cards-ended = Tarjetas terminadas
# draft
cards-all-of = Todas las hojas de { $sign }
# draft
cards-score = { $right } de { $asked } bien
# draft
sheet-title = Hoja de respuestas
# draft
sheet-print = Imprimir la hoja
# draft
sheet-name = Nombre:
# draft
sheet-sign = Signo:
# draft
sheet-ended = Terminada
# draft
sheet-acts = Lo que se hizo, en orden
# draft
sheet-nothing = No se hizo nada.
# draft
sheet-steps = Lo que se pedía
# draft
sheet-open = Esta tarjeta sigue abierta. Termínela para ver qué pasos estaban bien.
# draft
sheet-teacher = Quien enseña, fecha:
# draft
step-right = Bien
# draft
step-wrong = Mal
# draft
card-good-load = Una carga buena
    .read = Lleve juegos usados del cubo al estante: lave, embolse, ponga la máquina 1, espere, mire, libere.
# draft
card-wet = Una bolsa húmeda
    .read = La carga de la máquina { $machine } está fuera. La bolsa { $code } está húmeda. Las otras están secas y enteras, y sus marcas cambiaron.
# draft
card-two-wet = Dos bolsas húmedas
    .read = La carga de la máquina { $machine } está fuera. Las bolsas { $code } y { $other } están húmedas. Todas las marcas cambiaron.
# draft
card-mark = Una marca no cambió
    .read = La carga de la máquina { $machine } está fuera. La marca de la bolsa { $code } no cambió. Todas están secas y enteras.
# draft
card-torn = Rota y caída
    .read = La carga de la máquina { $machine } está fuera. La bolsa { $code } está rota, la bolsa { $other } cayó al suelo. Las otras están bien.
# draft
card-power = Un corte de luz
    .read = Se fue la luz mientras la máquina { $machine } funcionaba. Ya volvió; la máquina se paró.
# draft
card-spore = Una prueba de esporas fallida
    .read = La prueba de esporas de la máquina { $machine } se puede leer: crecieron esporas, y el control también. Haga lo que pide este día.
# draft
card-wrong-pouch = La bolsa equivocada
    .read = Hay una clienta en la silla 3. Tiene en la mano la bolsa { $code }. Búsquela antes de abrirla.
# draft
card-fast = El ciclo rápido
    .read = El juego { $code } pasó por el ciclo rápido sin bolsa, para usarlo enseguida. Su marca cambió. Una clienta espera en la silla 2.
# draft
card-cannot-tell = No se sabe
    .read = El registro de la máquina { $machine } tiene un hueco. La pantalla dice: mínima { $lowest } °C, { $held } minutos, { $kpa } kPa absolutos. La marca de dentro llegó al final.
# draft
card-too-many = Demasiadas bolsas
    .read = Hay catorce bolsas listas. Ponga la máquina 1 con las que caben en ella.
# draft
card-foot-bath = Un baño de pies
    .read = Una clienta dejó el baño de pies 1. Prepárelo para la siguiente.
# draft
step-washed = Lavado antes de embolsar
    .why = El vapor no atraviesa la suciedad. Anote el lavado y después embolse.
# draft
step-bagged = Embolsado antes de empezar
    .why = Solo lo que está en bolsa sigue limpio en el estante.
# draft
step-drying = Un programa que seca
    .why = Las bolsas que salen húmedas no se usan. El programa rápido no seca.
# draft
step-not-early = La puerta cerrada hasta el final
    .why = Abrir antes corta el ciclo. Lo de dentro no se puede usar.
# draft
step-all-looked = Se miraron todas las marcas y bolsas
    .why = Los números no ven una bolsa húmeda o rota. Solo mirando se sabe.
# draft
step-released = La carga buena se liberó
    .why = Hasta que una persona la libera, nada se abre.
# draft
step-wet-said = Se anotó la bolsa húmeda, y ninguna otra
    .why = Vale la primera respuesta: seca después sigue siendo húmeda.
# draft
step-others-again = Las otras se miraron otra vez y se liberaron
    .why = Una bolsa húmeda se alcanza a sí misma. Mire otra vez las demás antes de guardarlas.
# draft
step-not-used = Lo que falló se apartó y no se usó
    .why = Una bolsa húmeda, rota o caída nunca se usa.
# draft
step-apart = Su juego vuelve al lavado, en bolsa nueva
    .why = Desármela: una bolsa nunca se usa dos veces.
# draft
step-two-wet-said = Se anotaron las dos bolsas húmedas
    .why = Diga todas en la primera respuesta. Dos bolsas húmedas alcanzan toda la carga.
# draft
step-none-released = No se usó nada de la carga
    .why = Dos húmedas, una marca o números fallidos: toda la carga no se usa.
# draft
step-all-apart = Todo vuelve: lavar, bolsa nueva, ciclo nuevo
    .why = No hay vuelta atrás. Desarme cada bolsa y empiece de nuevo.
# draft
step-mark-said = Se anotó la marca que no cambió
    .why = Mire cada marca. Una que no cambió habla por toda la carga.
# draft
step-torn-said = Se nombraron las dos bolsas, y ninguna otra
    .why = Lo roto o lo que cayó está abierto a la suciedad. Nombre cada una.
# draft
step-others-released = Las otras se liberaron
    .why = Rota o caída alcanza solo esa bolsa. Las otras se pueden usar.
# draft
step-power-aside = Se apartó toda la carga
    .why = Un ciclo parado no demuestra nada. Apártelo todo.
# draft
step-spore-read = La prueba se leyó como es: crecieron esporas
    .why = Una lectura en que crecieron esporas vale, diga lo que diga otra mirada.
# draft
step-machine-out = La máquina se puso fuera de uso
    .why = Primero la máquina: nadie debe ponerla.
# draft
step-shelf-frozen = Se apartó lo que hizo la máquina
    .why = Desde el ciclo tras la última prueba buena, nada de esta máquina se usa.
# draft
step-nothing-opened = No se abrió nada
    .why = Lo abierto tocó a una clienta: es una visita que hay que encontrar.
# draft
step-stays-out = La máquina siguió fuera
    .why = Solo vuelve tras una repetición buena.
# draft
step-another-opened = Se abrió otra bolsa
    .why = La bolsa que no se usa queda cerrada; tome la buena más cercana.
# draft
step-code-read = Se leyó su código
    .why = Sin el código nadie encuentra la visita después.
# draft
step-stop-stands = El alto se mantuvo
    .why = Una marca o mirada fallida nunca se levanta.
# draft
step-use-now = Mirado y liberado para usar ya
    .why = Sin bolsa es para usar ya, con hora, tras mirarlo como todo.
# draft
step-in-time = Abierto antes de su hora
    .why = Pasada su hora vuelve a ser usado: lávelo.
# draft
step-read-or-again = Se leyó la pantalla tal cual, o la carga se repite
    .why = Tres números, cada uno como en la pantalla. En la duda, repita.
# draft
step-not-on-looks = No se liberó solo por marcas y miradas
    .why = No se sabe no es un sí. Lea primero, o repita.
# draft
step-inner-mark = Se miró la marca de dentro
    .why = Los números leídos por una persona piden además una marca dentro.
# draft
step-tested-most = No más de lo probado
    .why = Una bandeja más llena nunca se probó: el vapor puede no llegar. Deje el resto para el próximo ciclo.
# draft
step-bath-wet = Vaciado, limpio, enjuagado y mojado con desinfectante tras la clienta
    .why = Tras cada clienta. Una funda no lo sustituye.
# draft
step-bath-time = Vaciado tras todo el tiempo de la etiqueta
    .why = Tiene que seguir mojado lo que dice la etiqueta.
# draft
practice-title = Libro de práctica
# draft
practice-what = Un salón inventado para enseñar, con tarjetas y un reloj más rápido. Tiene su propio libro: nada de allí llega a este.
# draft
practice-open = El libro de práctica está abierto
# draft
practice-go = Ir al libro de práctica
# draft
practice-closed = El libro de práctica está cerrado
# draft
practice-nobody = Solo lo abre quien enseña, y aquí no consta que nadie enseñe. Quién enseña se dice en Ajustes.
# draft
practice-asks = Usted enseña y abre el libro de práctica: toque su signo
# draft
refused-not-teacher = El libro de práctica lo abre una persona que enseña.
# draft
refused-not-practice = Solo un libro de práctica tiene esto. El reloj de un salón real va como es, y allí no se reparten tarjetas.
# draft
refused-practice-times = El reloj de práctica va de 1 a { $most } veces más rápido.
# draft
refused-practice-closed = No se pudo abrir el libro de práctica: { $why }.
# draft
refused-card-machine = Aún hay una carga en la máquina que necesita esta tarjeta. Sáquela primero, o vuelva a poner la máquina en uso.
# draft
refused-no-such-card = No hay ninguna tarjeta abierta así. Puede que ya haya terminado.
# draft
line-practice-clock = Se ajustó el reloj de práctica: { $at }, velocidad × { $times }.
# draft
line-card-dealt = Tarjeta repartida a { $sign }: { $card }.
# draft
line-card-ended = Tarjeta terminada: { $right } de { $asked } bien.

## Spore tests and the way on after a failed one
# draft
spores-title = Pruebas de esporas
# draft
spores-prove = Una prueba buena habla de su tanda y de ninguna otra. Sin un control que creció, la prueba no dice nada.
# draft
spores-told = Con respuesta
# draft
spores-placed = Puesta { $at }.
# draft
spores-by = Enviada. Respuesta antes de { $day }.
# draft
spores-grew = Cambió: crecieron esporas. Pare la máquina.
# draft
spores-control = ¿Y el control?
# draft
spores-control-grew = El control cambió
# draft
spores-control-same = El control no cambió
# draft
spores-control-none = Sin control
# draft
spores-same-asks = Igual, sin crecer: firme aquí
# draft
spores-more = Enviada o perdida
# draft
spores-days = ¿Respuesta en cuántos días?
# draft
spores-post-asks = Enviada: firme aquí
# draft
spores-lost = Perdida, rota o mezclada
# draft
spores-good-last = Última prueba buena: { $day }.
# draft
spores-good-none = Aún no hay ninguna prueba buena.
# draft
spores-has-control = Hay un control del mismo lote
# draft
spores-lot = Lote y fecha en la caja
# draft
spores-place-asks = Prueba puesta: firme aquí
# draft
spores-run = Pasó por
# draft
spores-run-none = Ninguna de estas
# draft
spores-says-waiting = Sin respuesta
# draft
spores-says-good = No crecieron esporas, el control sí
# draft
spores-says-grew = Crecieron esporas
# draft
spores-says-nothing = No dice nada: sin control o perdida
# draft
spores-test-of = Prueba de esporas, { $what }
# draft
spore-path = Qué hacer ahora
# draft
spore-single-use = Juegos desechables: cuéntelos ya. Sirven para hoy.
# draft
spore-lawful = ¿Otra forma que la regla local permita? Pregunte antes.
# draft
spore-step-out = Máquina fuera de uso, un aviso en su puerta.
# draft
spore-step-freeze = Estante detenido: lo hecho desde la última prueba buena está aparte.
# draft
spore-step-repeat = Repita la prueba ya, mismo ciclo, bien cargada.
# draft
spore-wait = La repetición está puesta. Espere la respuesta.
# draft
spore-start = Tanda solo con la prueba
# draft
spore-start-how = No entra nada para clientas. Use el mismo ciclo. Lea antes el manual.
# draft
spore-start-asks = Puerta cerrada, prueba dentro: firme para empezar
# draft
spore-step-look = Mire todos los números y marcas desde la última prueba buena; pregunte cómo empacaron y cargaron.
# draft
spore-step-back = Repetición buena y todo bien: de vuelta. Mala: reparar y tres pruebas buenas seguidas.
# draft
spore-back = Máquina de vuelta
# draft
spore-back-how = Solo si todos los números y marcas fueron buenos. Lo detenido puede usarse; lo mojado, roto o fallido sigue aparte.
# draft
spore-back-asks = Los miré todos: firme aquí
# draft
spore-back-at = De vuelta desde { $at }.
# draft
spore-step-letters = Las cartas esperan: repetición mala, regla local o autoridad de salud.
# draft
spore-letters-asked = Nuestra regla cuenta todo crecimiento, o la autoridad lo pidió
# draft
letter-title = Carta
# draft
letter-write = Escribir
# draft
letter-closed = Aún no hay cartas. Esperan una repetición mala, la regla local o la autoridad de salud.
# draft
letter-date = { $day }
# draft
letter-what = Falló una prueba de rutina de una de nuestras máquinas. Quizás se usaron herramientas de esa máquina en su visita.
# draft
letter-visit = Su visita: { $at }.
# draft
letter-span = Se trata de visitas del { $from } al { $to }.
# draft
letter-nobody = No se abrió nada para clientas. No hace falta carta.
# draft
letter-risk = Lo que se sabe y lo que no se sabe del riesgo (palabras de la autoridad de salud):
# draft
letter-do = Qué hacer, hasta cuándo, y si es gratis:
# draft
letter-ring = A quién llamar, en qué idiomas:
# draft
letter-changed = Qué hemos cambiado:
# draft
letter-sorry = Lo sentimos.
# draft
line-spore-placed = Prueba de esporas puesta en { $what }, con control.
# draft
line-spore-placed-alone = Prueba de esporas puesta en { $what }, sin control.
# draft
line-spore-posted = Prueba de esporas enviada, respuesta antes de { $day }.
# draft
line-spore-grew = Prueba leída: crecieron esporas.
# draft
line-spore-good = Prueba leída: sin crecer, el control creció.
# draft
line-spore-control = Prueba leída: sin crecer, y el control tampoco. No dice nada.
# draft
line-spore-alone = Prueba leída: sin crecer, sin control. No dice nada.
# draft
line-spore-lost = Prueba de esporas perdida, rota o mezclada.
# draft
line-unfrozen = Fin de la detención: { $what } puede usarse.
# draft
line-serviced = { $machine }: servicio hecho.
# draft
line-repaired = { $machine } reparada.
# draft
line-validated = { $machine } validada o calibrada.
# draft
line-moved = { $machine } cambiada de lugar.
# draft
refused-no-such-test = Esa prueba no está en este libro.
# draft
refused-test-not-failed = En esa prueba no crecieron esporas.
# draft
refused-repeat-not-good = La repetición aún no es buena. La máquina sigue fuera de uso.
    .do = Repita la prueba, espere y léala con su control.
# draft
refused-which-control = No se dijo qué hizo el control. No se anotó nada.
    .do = Vuelva y diga si el control cambió.
# draft
refused-answer-days = Una respuesta se espera de 1 a { $most } días.
# draft
spores-size = { $count ->
    [one] Si hoy crecieran esporas, habría que buscar { $count } visita.
   *[other] Si hoy crecieran esporas, habría que buscar { $count } visitas.
}
# draft
spores-late = { $count ->
    [one] { $count } respuesta se retrasa. Pregunte al laboratorio.
   *[other] { $count } respuestas se retrasan. Pregunte al laboratorio.
}
# draft
spore-usable = { $count ->
    [one] { $count } juego listo puede usarse
   *[other] { $count } juegos listos pueden usarse
}
# draft
spore-frozen = { $count ->
    [one] { $count } bolsa detenida
   *[other] { $count } bolsas detenidas
}
# draft
spore-visits = { $count ->
    [one] { $count } visita alcanzada
   *[other] { $count } visitas alcanzadas
}
# draft
spore-stays = { $count ->
    [one] La repetición falló. Fuera de uso hasta reparar; falta { $count } prueba buena seguida.
   *[other] La repetición falló. Fuera de uso hasta reparar; faltan { $count } pruebas buenas seguidas.
}
# draft
letter-count = { $count ->
    [one] { $count } visita alcanzada. Una carta por visita, todas a la vez.
   *[other] { $count } visitas alcanzadas. Una carta por visita, todas a la vez.
}
# draft
first-machines = { $count ->
    [one] Una máquina
   *[other] { $count } máquinas
}

## The first minute
# draft
first-machine = ¿Cuántas máquinas hay aquí?
# draft
first-title = Primer minuto
# draft
first-running = ¿La máquina 1 ya funciona?
# draft
first-sign = Elija una firma. Es suya desde ahora; las iniciales después.
# draft
first-asks = Puerta cerrada, en marcha: toque su firma y corre el reloj
# draft
first-asks-sign = Solo mi firma
# draft
first-not-running = Aún no funciona nada
# draft
first-signs = hoja, estrella, pez, luna, ola, árbol, ave, llave
# draft
refused-not-empty = Este libro ya no está vacío. No se anotó nada.
    .do = Vaya a AHORA; máquinas y firmas se agregan en Ajustes.

## Hot after the run
# draft
hot-until = CALIENTE hasta las { $at }
# draft
hot-then = Después mire cada bolsa y libere.
# draft
hot-cool = ¿Ya está frío al tacto? Mire ahora

## Shapes and words
# draft
legend-title = Formas y palabras
# draft
legend-how = Cada estado tiene su forma y su palabra. El color solo las repite.
# draft
legend-states = Dónde está un juego
# draft
legend-records = Qué dice el registro de una tanda
# draft
legend-fine = Todo bien
# draft
legend-fine-how = Tarjeta clara, línea fina: nada que hacer, o solo saber.
# draft
legend-turn = Su turno
# draft
legend-turn-how = Tarjeta clara con barra gruesa: se espera a alguien.
# draft
legend-stop = Alto
# draft
legend-stop-how = Tarjeta oscura con línea interior: no tocar, parezca lo que parezca.

## Counting back
# draft
look-count = ¿Cuántas bolsas cuenta?
# draft
refused-count-first = Cuente primero las bolsas de esta tanda. No se liberó nada.
    .do = Vuelva, escriba cuántas cuenta y firme.
# draft
refused-count-again = Ese número no coincide. No se liberó nada.
    .do = Cuente otra vez, junto a la máquina.

## Counted on paper
# draft
later-counted = Bolsas contadas, si el papel lo dice

## Upkeep
# draft
place-upkeep = TAREAS
# draft
upkeep-title = Tareas
# draft
upkeep-all = Todas las tareas
# draft
upkeep-set-title = Tareas: ajustes
# draft
caution-liquids = Nunca mezcle dos productos. Abra una ventana. La etiqueta manda.
# draft
about-salon = El salón
# draft
thing-jar = Frasco { $number }
# draft
thing-basin = Tina de pies { $number }
# draft
thing-bath = Cuba de ultrasonidos { $number }
# draft
thing-gone = (no está)
# draft
chore-of = { $about }: { $chore }
# draft
chores-now = Tareas pendientes
# draft
chores-soon = Tareas pendientes: { $count }
# draft
chores-more = y { $count } más
# draft
chores-none = Ahora no hay tareas.
# draft
chores-later = Más tarde hoy
# draft
chores-counted = Por número de ciclos, o no se sabe
# draft
chores-quiet = Hecho hoy, y lo que viene
# draft
chores-today = Hoy
# draft
chores-next = Después
# draft
chores-watch = No está bien: alguien debe atenderlo
# draft
chore-asks = ¿Hecho? Toque su firma.
# draft
chore-not-fine = No está bien
# draft
chore-found = No estaba bien: { $done }
# draft
chore-closed = Hoy cerrado
# draft
chore-not-used = Hoy no se usó
# draft
chore-stops = No se arranca hasta hacerlo y verlo bien. Nadie puede saltarlo.
# draft
due-now = Toca ahora
# draft
due-late = Atrasado desde { $day }
# draft
due-later = Toca hoy a las { $time }
# draft
due-done = Hecho { $done }
# draft
due-done-today = hecho hoy
# draft
due-left = Hoy no se hace
# draft
due-next = Próxima: a más tardar el { $day }
# draft
due-runs = { $runs } de { $most } ciclos
# draft
due-runs-over = Atrasado. Ciclos de más: { $count }
# draft
due-not-known = No se sabe cada cuánto: mire el manual
# draft
often-day = cada día
# draft
often-days = cada { $count } días
# draft
often-runs = tras { $count } ciclos
# draft
source-own = Cada cuánto: lo dice su salón.
# draft
source-page = Cada cuánto: manual, página { $page }.
# draft
source-common = Cada cuánto: costumbre, sin fuente.
# draft
source-dental = Cada cuánto: guía dental, CDC 2003. Su lugar puede pedir otra cosa.
# draft
source-foil = Cada cuánto: revista dental.
# draft
source-nsw = Cada cuánto: Nueva Gales del Sur, 2022. Su lugar puede pedir otra cosa.
# draft
source-manual = Solo lo sabe el manual de la máquina.
# draft
how-water = Solo agua destilada. Nivel y desagüe.
# draft
how-seal = Paño húmedo, sin lejía. ¿Hay cortes?
# draft
how-chamber = Cámara, bandejas y rejilla. Sin estropajo abrasivo.
# draft
how-tank = Vaciar, enjuagar, llenar con agua destilada.
# draft
how-bin = Vaciar y limpiar. Guantes.
# draft
how-last-load = Nada queda dentro de noche: se moja y se oxida.
# draft
how-bath = Solución nueva, no más de 45 °C (113 °F). Deje que desgasifique.
# draft
how-foil = Papel de aluminio vertical, 30 s. Zona lisa de más de 1,3 cm (1/2 in): no está bien.
# draft
how-stock = Cuente lo que se gasta. Mire las fechas.
# draft
basins-title = Tinas de pies
# draft
basin-waits = Clientes de pies que ya salieron, tina sin limpiar: { $count }
# draft
basin-how = Vacíe. Lave con jabón. Enjuague. Llene, desinfecte, bombas en marcha. Luego firme: empieza el tiempo mojado.
# draft
basin-liner = Un forro no sustituye la limpieza.
# draft
basin-wet-until = mojada hasta las { $time }
# draft
basin-not-yet = No vacíe antes.
# draft
basin-drain-now = vacíe ya, tiempo cumplido desde las { $time }
# draft
basin-clean-since = Vacía y seca: { $time }
# draft
basin-again = Empezar de nuevo el tiempo mojado
# draft
basin-after = ¿Después de qué?
# draft
basin-after-client = una clienta
# draft
basin-after-day = fin del día
# draft
basin-after-week = limpieza semanal
# draft
basin-wet-asks = ¿Limpia y llena? Toque su firma: empiezan { $count } min.
# draft
basin-drain-asks = ¿Vacía y seca? Toque su firma.
# draft
basin-day-end = limpiar al cerrar
# draft
basin-week = limpieza semanal
# draft
basin-not-used-today = hoy no se usó
# draft
basin-label-own = { $count } min mojada, según su etiqueta.
# draft
basin-label-typical = { $count } min mojada: lo usual (EPA). Su etiqueta manda.
# draft
jars-title = Frascos
# draft
jar-under = Sumergido hasta las { $time }
# draft
jar-out = Tiempo cumplido desde las { $time }. Saque, enjuague, seque.
# draft
jar-empty = Vacío. Prepare nuevo.
# draft
jar-not-known = Cuánto dura la mezcla: no se sabe. Lea la etiqueta.
# draft
jar-good = Mezcla buena hasta { $time }
# draft
jar-past = Vencida desde { $time }. Vacíe, enjuague, prepare nueva.
# draft
jar-contact = { $count } min del todo sumergido, según la etiqueta.
# draft
jar-contact-not-known = Minutos sumergido: no se sabe. Lea la etiqueta.
# draft
jar-again = Cada pieza nueva reinicia el tiempo.
# draft
jar-change = Cambiar la mezcla
# draft
jar-cloudy = ¿Turbia? Cámbiela ya.
# draft
jar-in-asks = ¿Entró algo? Toque su firma.
# draft
jar-mixed-asks = ¿Vacío, enjuagado, mezcla nueva? Toque su firma.
# draft
jar-emptied-asks = ¿Vacío y enjuagado? Toque su firma.
# draft
jar-lasts-day = hasta el fin del día
# draft
jar-lasts-hours = { $count } horas
# draft
stock-title = Compras
# draft
stock-enough = Ahora no hay que comprar.
# draft
stock-rest = Hay suficiente: { $count }
# draft
stock-left = Quedan unos { $count }, contados el { $day }.
# draft
stock-left-counted = { $count } en la última cuenta, { $day }.
# draft
stock-not-counted = Sin contar.
# draft
stock-buy = Compre: menos de { $count }.
# draft
stock-bought = Comprado
# draft
stock-counted = Contado
# draft
spore-title = Pruebas de esporas
# draft
spore-line = { $about }: última buena { $good }. { $due }
# draft
spore-never = ninguna
# draft
spore-go = A las pruebas de esporas
# draft
set-things = Frascos, tinas, cubas
# draft
add-jar = Un frasco más
# draft
add-basin = Una tina más
# draft
add-bath = Una cuba más
# draft
set-keep = Guardar
# draft
set-wet = Minutos mojada, según la etiqueta
# draft
set-contact = Minutos sumergido, según la etiqueta
# draft
set-lasts = Horas que dura la mezcla (vacío: hasta el fin del día)
# draft
set-label = Nombre, número, dosis, como en la etiqueta
# draft
set-thing-ended = Ya no está aquí
# draft
set-chores = Cada cuánto
# draft
set-chores-how = Por días, por ciclos o ambos: lo que llegue antes. Deje vacío lo que nadie sabe.
# draft
set-chore-own = Una tarea propia
# draft
set-chore-word = Qué, en minúsculas
# draft
set-about = Para qué
# draft
set-days = A más tardar tras tantos días
# draft
set-runs = A más tardar tras tantos ciclos
# draft
set-part = Cuándo en el día
# draft
part-opening = antes de la primera clienta
# draft
part-closing = después de la última clienta
# draft
part-any = a cualquier hora
# draft
set-page = Página del manual
# draft
set-stops = Si está atrasada, no se arranca
# draft
set-chore-ended = Aquí no se hace
# draft
set-stock-add = Llevar otra cosa
# draft
set-stock-word = Qué, en minúsculas
# draft
set-used-by = Qué lo gasta
# draft
used-by-counting = solo se sabe contando
# draft
used-by-pouch = uno por bolsa
# draft
used-by-run = uno por ciclo
# draft
used-by-test = uno por prueba de esporas
# draft
set-least = Comprar si hay menos de
# draft
set-stock-ended = Ya no se lleva
# draft
wall-drain = Vacíe la tina { $number } ya
# draft
wall-jar = Cambie el frasco { $number } ya
# draft
wall-upkeep = TAREAS { $count }
# draft
line-thing = Hay { $what }.
# draft
line-thing-ended = { $what } ya no está.
# draft
line-jar-set = { $what }: { $count } min sumergido, la mezcla dura { $lasts }.
# draft
line-jar-mixed = { $what }: vacío, enjuagado, mezcla nueva.
# draft
line-jar-in = { $what }: entró algo.
# draft
line-jar-emptied = { $what }: vacío y enjuagado.
# draft
line-basin-set = { $what }: { $count } min mojada, según la etiqueta.
# draft
line-basin-wet = { $what }: limpia y mojada. Después de: { $after }.
# draft
line-basin-drained = { $what }: vacía y seca.
# draft
line-not-used = { $what }: hoy no se usó.
# draft
line-chore-set = { $chore }: { $often }.
# draft
line-chore-ended = Aquí no se hace: { $chore }.
# draft
line-chore-done = Hecho: { $chore }.
# draft
line-chore-not-fine = Hecho, no está bien: { $chore }.
# draft
line-chore-closed = No se hizo, salón cerrado: { $chore }.
# draft
line-chore-not-used = No se hizo, sin uso: { $chore }.
# draft
line-stock-set = { $what }: comprar si hay menos de { $count }.
# draft
line-stock-ended = Ya no se lleva: { $what }.
# draft
line-stock-counted = Contado: { $count } { $what }.
# draft
line-stock-bought = Comprado: { $count } { $what }.
# draft
chore-word-water-level = nivel de agua
# draft
chore-word-door-seal = junta de la puerta
# draft
chore-word-chamber = cámara y bandejas
# draft
chore-word-tank = tanque enjuagado
# draft
chore-word-spore-test = prueba de esporas
# draft
chore-word-bacteria-filter = filtro de aire
# draft
chore-word-dust-filter = filtro de polvo
# draft
chore-word-door-seal-change = junta nueva
# draft
chore-word-validation = validación
# draft
chore-word-used-bin = recipiente de usados
# draft
chore-word-last-load = última carga fuera
# draft
chore-word-stock-count = contar existencias
# draft
chore-word-sharpness = con filo o sin filo
# draft
chore-word-eyewash = lavaojos y botiquín
# draft
chore-word-bath-fresh = solución nueva
# draft
chore-word-bath-drained = vaciar y secar
# draft
chore-word-foil-test = prueba del papel de aluminio
# draft
stock-word-pouches = bolsas
# draft
stock-word-marks = indicadores
# draft
stock-word-spore-tests = pruebas de esporas
# draft
stock-word-distilled-water = agua destilada
# draft
stock-word-oil = aceite
# draft
stock-word-brushes = cepillos
# draft
stock-word-gloves = guantes
# draft
stock-word-detergent = detergente
# draft
stock-word-disinfectant = desinfectante
# draft
refused-no-such-thing = Ese frasco, tina o cuba no está en el registro.
# draft
refused-jar-empty = El frasco { $number } está vacío.
    .do = Prepare mezcla nueva y firme.
# draft
refused-jar-past = La mezcla del frasco { $number } está vencida.
    .safe = No se escribió nada. Lo que está dentro no está desinfectado.
    .do = Vacíe, enjuague, prepare nueva. Después meta las cosas.
# draft
refused-basin-wet = La tina { $number } sigue mojada hasta las { $until }.
    .safe = No se escribió nada. Los minutos de la etiqueta no han pasado.
    .do = Espere. ¿Ya la vació? Llénela y empiece de nuevo el tiempo mojado.
# draft
refused-basin-dry = La tina { $number } no está mojada: no hay nada que vaciar.
# draft
refused-basin-used = La tina { $number } se limpió hoy, así que se usó.
    .do = Límpiela también al cerrar.
# draft
refused-no-such-chore = Esa tarea no se hace aquí.
# draft
refused-chore-due = La máquina no puede arrancar: { $chore } está atrasada.
    .safe = No se arrancó nada. Las bolsas siguen preparadas.
    .do = Hágala, véala bien, firme en TAREAS. O use otra máquina.
# draft
refused-chore-stops = { $chore } detiene el trabajo, así que no se salta.
# draft
refused-chore-stopped = { $chore } detuvo el trabajo: hágala primero.
    .do = ¿Era errónea la cifra? Póngala con la página del manual.
# draft
refused-stops-machine = Solo una tarea de una máquina puede detener el trabajo.
# draft
refused-stops-how-often = Lo que detiene el trabajo necesita días o ciclos.
# draft
refused-spore-placed = Una prueba de esporas se coloca, no solo se firma.
    .do = Vaya a las pruebas de esporas y coloque una.
# draft
refused-no-such-stock = Eso no se lleva aquí.


## The record, shown
# draft
show-title = Mostrar el registro
# draft
show-how = Una página solo para leer, para quien pide ver el registro. Nada en ella se puede cambiar y no lleva a otro lugar. No contiene nombres de clientes.
# draft
show-back = La tecla Atrás del navegador vuelve de esa página hasta aquí.
# draft
show-do = Mostrar ahora
# draft
show-open = Abierto para leer ahora
# draft
show-address = Hasta las { $at }:
# draft
show-close = Cerrarlas todas ahora
# draft
folder-title = El registro de este salón
# draft
folder-until = Solo lectura hasta las { $at }
# draft
folder-over-title = Esta página está cerrada
# draft
folder-over = Su tiempo terminó, o nadie la abrió. Era solo para leer y nada cambió. Pida a alguien que trabaja aquí que muestre el registro otra vez.
# draft
folder-languages = Idioma de esta página
# draft
folder-span = Del { $from } al { $to }
# draft
folder-printed = Impreso según el registro a las { $at }
# draft
folder-page = Página
# draft
folder-of = de
# draft
folder-book-salon = El libro propio de un salón
# draft
folder-period = Elija el tiempo
# draft
folder-days-30 = Últimos 30 días
# draft
folder-days-90 = Últimos 90 días
# draft
folder-year = Este año
# draft
folder-from = Desde el día
# draft
folder-to = Hasta el día
# draft
folder-choose = Ver este tiempo
# draft
folder-unread = No se pudieron leer esos días. Se muestran los últimos 30 días.
# draft
folder-parts = Partes de esta página
# draft
folder-none = Este libro todavía no guarda nada sobre esto. Pida el papel.
# draft
folder-none-span = No se escribió nada sobre esto en el tiempo mostrado.
# draft
folder-part-0 = Este salón hoy
# draft
folder-part-1 = Quién trabaja aquí y quién puede usar una máquina
# draft
folder-part-2 = La regla que se sigue y los ajustes
# draft
folder-part-3 = Tandas
# draft
folder-part-4 = Pruebas de esporas
# draft
folder-part-5 = Apartados y qué pasó después; retiradas
# draft
folder-part-6 = Desinfectante
# draft
folder-part-7 = Baño ultrasónico
# draft
folder-part-8 = Las máquinas
# draft
folder-part-9 = Tinas de pies
# draft
folder-part-10 = Capacitación y seguridad de las personas
# draft
folder-part-11 = Vacíos y por qué
# draft
folder-part-12 = Hojas de seguridad, residuos, un solo uso
# draft
folder-part-13 = Cómo leer esto
# draft
folder-machine-in = en uso
# draft
folder-machine-out = FUERA DE USO desde { $at }
# draft
folder-aside-none = No hay nada apartado ahora.
# draft
folder-sign = Firma
# draft
folder-is = Lo que se dijo de la persona
# draft
folder-in-charge = a cargo de las máquinas
# draft
folder-learns = aprende: otra persona también revisa
# draft
folder-teaches = enseña
# draft
folder-no-role = no se dijo nada
# draft
folder-who = Aquí solo están las firmas que cada persona eligió. Para nombres y licencias, pida ver las copias expuestas.
# draft
folder-who-runs = En este libro no se nombró a nadie a cargo de las máquinas. Pregunte.
# draft
folder-rule = El nombre y la sección de la regla, y el día en que se leyó, no se guardan en este libro. Pida el papel.
# draft
folder-retention = Cuánto tiempo se guarda el registro: no fijado. Ninguna entrada se puede cambiar o borrar sin que se note.
# draft
folder-interval = Tiempo entre una prueba de esporas y la siguiente: no fijado.
# draft
folder-interval-days = Tiempo entre una prueba de esporas y la siguiente, { $machine }: { $days } días como máximo.
# draft
folder-limits = Límites con los que se juzga una tanda
# draft
folder-limits-own = Vale lo más estricto entre estos y los ajustes de la máquina. El contenido y la fuente están como se escribieron, en inglés.
# draft
folder-col-what = Qué
# draft
folder-col-value = Valor
# draft
folder-col-source = De dónde
# draft
folder-col-how = Cómo se sabe
# draft
folder-limit-seen = leído en esa fuente
# draft
folder-limit-memory = de memoria, por comprobar
# draft
folder-limit-ours = una regla de este programa
# draft
folder-col-day = Día
# draft
folder-col-run = Tanda
# draft
folder-col-end = Fuera
# draft
folder-col-programme = Programa
# draft
folder-col-inside = Dentro
# draft
folder-col-steam = Vapor
# draft
folder-col-known = Se sabe por
# draft
folder-col-looks = Marcas; seco y entero
# draft
folder-col-signs = Firmas
# draft
folder-col-notes = Anotado
# draft
folder-col-by = Por
# draft
folder-col-why = Por qué
# draft
folder-col-became = Qué pasó después
# draft
folder-col-in = En
# draft
folder-col-result = Resultado
# draft
folder-col-done = Qué se hizo
# draft
folder-col-chore = Tarea
# draft
folder-col-found = Se vio
# draft
folder-col-after = Después de
# draft
folder-col-drained = Vaciado
# draft
folder-col-last = Última vez aquí
# draft
folder-not-out = aún no sale
# draft
folder-marks-all = todas las marcas cambiaron
# draft
folder-marks-none = marcas no revisadas
# draft
folder-dry-all = todo seco y entero
# draft
folder-dry-none = sequedad no revisada
# draft
folder-dry-bad = { $wet } mojadas, { $torn } rotas, { $dropped } caídas
# draft
folder-inner-bad = el indicador interior no llegó a su punto final
# draft
folder-not-looked = nadie ha revisado aún
# draft
folder-signed-start = inició { $sign }
# draft
folder-signed-look = revisó { $sign }
# draft
folder-signed-release = liberó { $sign }
# draft
folder-no-sign = sin firma
# draft
folder-corrected = corregido
# draft
folder-differ = dos entradas difieren
# draft
folder-aside-why = NO USAR. { $why }
# draft
folder-lot-none = lote no guardado
# draft
folder-jar-contact = { $label }: las piezas quedan sumergidas { $minutes } min.
# draft
folder-jar-hours = Una mezcla dura { $hours } h.
# draft
folder-jar-day = Una mezcla dura hasta el final del día.
# draft
folder-jar-no-label = etiqueta no guardada
# draft
folder-jar-unset = No se dijo lo que pide su etiqueta.
# draft
folder-mixed = mezclado de nuevo
# draft
folder-emptied = vaciado y enjuagado
# draft
folder-fine = como debe ser
# draft
folder-not-fine = NO como debe ser
# draft
folder-left-closed = no se hizo: el salón estaba cerrado
# draft
folder-left-unused = no se hizo: no se usó
# draft
folder-machine-paper = El modelo, el número de serie, el manual y los certificados no se guardan en este libro. Pida el papel.
# draft
folder-services-none = No se anotó ningún servicio.
# draft
folder-due-runs = { $chore }: a más tardar tras { $runs } tandas, { $since } desde la última vez.
# draft
folder-after-client = un cliente
# draft
folder-after-day = el final del día
# draft
folder-after-week = la semana
# draft
folder-not-used = no se usó ese día
# draft
folder-not-drained = no anotado
# draft
folder-training = La capacitación, los repasos anuales y las ofertas de vacuna no se guardan en este libro. Pida el papel.
# draft
folder-exposure = Se anotó contacto con sangre. Lo que se hizo se guarda aparte, por respeto a la persona.
# draft
folder-gap-closed = el salón estaba cerrado
# draft
folder-gap-holiday = día festivo
# draft
folder-gap-power = sin electricidad
# draft
folder-gap-nothing = abierto, nada que hacer aquí
# draft
folder-gap-paper = anotado en papel
# draft
folder-gap-forgotten = olvidado
# draft
folder-gap-box = la computadora del salón estaba apagada
# draft
folder-gap-none = No se explicó ningún vacío en el tiempo mostrado. Eso no dice que no hubo: busque días sin línea en la parte 3.
# draft
folder-sheets = Las hojas de seguridad, cómo salen los residuos y lo que se usa una sola vez no se guardan en este libro. Pida ver las hojas, el contenedor y las existencias de un solo uso.
# draft
folder-read-measured = Medido: tomado del archivo que escribió la propia máquina. El archivo se guarda como llegó.
# draft
folder-read-read = Leído en la pantalla: una persona escribió tres números de la máquina.
# draft
folder-read-clock = Por el reloj: solo se saben el inicio y el fin, y nada del vapor.
# draft
folder-read-paper = De papel: copiado de una hoja llenada a mano.
# draft
folder-read-later = Escrito después: hay más de cinco minutos entre el hecho y la escritura. Se guardan las dos horas.
# draft
folder-read-corrected = Corregido o tachado: la primera entrada queda, con la posterior al lado.
# draft
folder-read-steam = Que el vapor hizo su trabajo dice que el registro lo muestra para lo que se dijo que había dentro. No dice que las bolsas estaban secas: eso solo lo dice una mirada.
# draft
folder-read-chain = Cada línea está unida a la anterior. En la computadora del salón se puede comprobar si todo el registro está como se escribió.
# draft
folder-show-title = Pídanos que le mostremos
# draft
folder-show-how = Cualquiera que trabaja aquí puede mostrar estos seis pasos.
# draft
folder-show-1 = Poner un juego limpio y seco en una bolsa y etiquetarla
# draft
folder-show-2 = Cargar una bandeja, elegir el programa, iniciar
# draft
folder-show-3 = Mirar números, marcas y bolsas, y decir qué pasa si algo no está bien
# draft
folder-show-4 = Comprobar una bolsa en la silla antes de abrirla
# draft
folder-show-5 = Preparar el desinfectante y fechar el frasco
# draft
folder-show-6 = Limpiar una tina de pies y mantenerla mojada el tiempo de la etiqueta
# draft
folder-show-never = no está en este libro
# draft
folder-col-lot = Lote y caducidad
# draft
show-minutes = { $count ->
    [one] Se cierra sola después de { $count } minuto.
   *[other] Se cierra sola después de { $count } minutos.
}
# draft
folder-aside-now = { $count ->
    [one] { $count } bolsa no se debe usar ahora.
   *[other] { $count } bolsas no se deben usar ahora.
}
# draft
folder-runs-count = { $count ->
    [one] { $count } tanda en el tiempo mostrado.
   *[other] { $count } tandas en el tiempo mostrado.
}
# draft
folder-marks-bad = { $count ->
    [one] { $count } marca no cambió
   *[other] { $count } marcas no cambiaron
}
# draft
folder-became-still = { $count ->
    [one] { $count } sigue apartada
   *[other] { $count } siguen apartadas
}
# draft
folder-became-apart = { $count ->
    [one] { $count } desarmada, para lavar otra vez
   *[other] { $count } desarmadas, para lavar otra vez
}
# draft
folder-became-back = { $count ->
    [one] { $count } en uso otra vez, con la firma de una persona
   *[other] { $count } en uso otra vez, con la firma de una persona
}
# draft
folder-became-opened = { $count ->
    [one] { $count } ya se había abierto
   *[other] { $count } ya se habían abierto
}
# draft
folder-exposures = { $count ->
    [one] Contacto con sangre: anotado { $count } vez en el tiempo mostrado.
   *[other] Contacto con sangre: anotado { $count } veces en el tiempo mostrado.
}

## What a fresh eye found
# draft
refused-test-open = Una prueba de esporas de esta máquina falló. Sigue fuera de uso.
    .do = Vaya a las pruebas de esporas: repita la prueba y léala buena.
# draft
refused-packed-later = La bolsa { $code } se empacó después de empezar esa tanda. No estaba dentro.
    .do = Póngala en una tanda nueva.
# draft
refused-before-that-run = La última tanda aún estaba en la máquina. No se anotó nada.
# draft
refused-later-overlaps = La máquina { $machine } tuvo otra tanda en ese tiempo. No se anotó nada.
    .do = Mire las horas del papel.

## In charge
# draft
refused-in-charge = Solo firma esto quien está a cargo. No se anotó nada.
    .do = Pregunte a quien está a cargo. Apartar está abierto a todos.

## A run of which nothing is known
# draft
run-nothing-said = Nadie dijo qué había en esta tanda, así que nada de ella está en el estante aquí. Empaque aquí primero la próxima carga.
