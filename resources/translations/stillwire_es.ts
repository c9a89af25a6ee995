<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>AimText</name>
    <message>
        <source>On the aim: stop, tighten</source>
        <translation>Ahí está: pare y apriete</translation>
    </message>
    <message>
        <source>Up by %1</source>
        <translation>Suba %1</translation>
    </message>
    <message>
        <source>Down by %1</source>
        <translation>Baje %1</translation>
    </message>
    <message>
        <source>one part-turn moves it by %1</source>
        <translation>un toque lo mueve %1</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>%1 would be %2, inside %3</source>
        <translation>%1 daría %2, dentro de %3</translation>
    </message>
    <message>
        <source>%1 would be %2, outside %3</source>
        <translation>%1 daría %2, fuera de %3</translation>
    </message>
    <message>
        <source>Aim while turning</source>
        <translation>Objetivo al girar</translation>
    </message>
    <message>
        <source>aim %1</source>
        <translation>objetivo %1</translation>
    </message>
    <message>
        <source>about %1 more part-turns, the way of T</source>
        <translation>unos %1 toques más, hacia el lado de T</translation>
    </message>
    <message>
        <source>about %1 more part-turns, the way of Shift+T</source>
        <translation>unos %1 toques más, hacia el lado de Mayús+T</translation>
    </message>
</context>
<context>
    <name>BandText</name>
    <message>
        <source>reference limits</source>
        <translation>límites de referencia</translation>
    </message>
    <message>
        <source>ground drop allowed</source>
        <translation>caída de masa permitida</translation>
    </message>
    <message>
        <source>%1 window</source>
        <translation>margen (%1)</translation>
    </message>
    <message>
        <source>%1 %2 to %3</source>
        <translation>%1 %2 a %3</translation>
    </message>
</context>
<context>
    <name>DrawingText</name>
    <message>
        <source>reference</source>
        <translation>referencia</translation>
    </message>
    <message>
        <source>signal</source>
        <translation>señal</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>masa</translation>
    </message>
    <message>
        <source>red lead</source>
        <translation>punta roja</translation>
    </message>
    <message>
        <source>black lead</source>
        <translation>punta negra</translation>
    </message>
    <message>
        <source>battery</source>
        <translation>batería</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>tope</translation>
    </message>
    <message>
        <source>released</source>
        <translation>suelto</translation>
    </message>
    <message>
        <source>pressed</source>
        <translation>pisado</translation>
    </message>
    <message>
        <source>key off</source>
        <translation>contacto quitado</translation>
    </message>
    <message>
        <source>hands off</source>
        <translation>sin tocar</translation>
    </message>
    <message>
        <source>slowly</source>
        <translation>despacio</translation>
    </message>
    <message>
        <source>harness side</source>
        <translation>lado del mazo</translation>
    </message>
    <message>
        <source>stays plugged in</source>
        <translation>sigue enchufado</translation>
    </message>
    <message>
        <source>again</source>
        <translation>otra vez</translation>
    </message>
</context>
<context>
    <name>FarText</name>
    <message>
        <source>Black lead to the battery,
red lead to the reference</source>
        <translation>Punta negra a la batería,
roja a la referencia</translation>
    </message>
    <message>
        <source>Touch nothing: reading
the reference wire</source>
        <translation>No toque nada: se lee
la referencia</translation>
    </message>
    <message>
        <source>Touch nothing: reading
the ground wire</source>
        <translation>No toque nada: se lee
el cable de masa</translation>
    </message>
    <message>
        <source>Hands and feet off,
let it rest</source>
        <translation>Manos y pies fuera,
déjelo en reposo</translation>
    </message>
    <message>
        <source>Push only the leads,
at clip and tip</source>
        <translation>Empuje solo las puntas,
pinza y extremo</translation>
    </message>
    <message>
        <source>Push the shaft sideways
and hold</source>
        <translation>Empuje de lado el eje
y mantenga</translation>
    </message>
    <message>
        <source>Bend one section
of the harness and hold</source>
        <translation>Doble un tramo
del mazo y mantenga</translation>
    </message>
    <message>
        <source>Go to: %1
and hold it there</source>
        <translation>Vaya a: %1
y manténgalo ahí</translation>
    </message>
    <message>
        <source>Move to each position
and hold it there</source>
        <translation>Vaya a cada posición
y manténgala</translation>
    </message>
    <message>
        <source>Slowly from end to end
and back, no stopping</source>
        <translation>Despacio de tope a tope
y vuelta, sin parar</translation>
    </message>
    <message>
        <source>Does the arm rest on its
stop? Lift it a little</source>
        <translation>¿Descansa en su tope?
Levante un poco el brazo</translation>
    </message>
    <message>
        <source>Later, warm: push the
shaft sideways and hold</source>
        <translation>Luego, en caliente: empuje
de lado el eje y mantenga</translation>
    </message>
    <message>
        <source>Turn until the meter
shows %1</source>
        <translation>Gire hasta que el
multímetro marque %1</translation>
    </message>
    <message>
        <source>Loosen the sensor, turn
it to the aim</source>
        <translation>Afloje el sensor y
gírelo hasta el objetivo</translation>
    </message>
    <message>
        <source>Key off and wait,
unplug nothing yet</source>
        <translation>Quite el contacto, espere;
no desenchufe nada aún</translation>
    </message>
    <message>
        <source>Hold the plug still,
push the shaft and hold</source>
        <translation>Sujete el conector,
empuje el eje y mantenga</translation>
    </message>
    <message>
        <source>Lead on the reference:
push the shaft and hold</source>
        <translation>Punta en la referencia:
empuje el eje y mantenga</translation>
    </message>
    <message>
        <source>Lead on the ground wire:
push the shaft and hold</source>
        <translation>Punta en la masa:
empuje el eje y mantenga</translation>
    </message>
    <message>
        <source>The reference is bad:
end here, or go on?</source>
        <translation>La referencia está mal:
¿terminar, o seguir?</translation>
    </message>
    <message>
        <source>The ground wire is bad:
end here, or go on?</source>
        <translation>El cable de masa está mal:
¿terminar, o seguir?</translation>
    </message>
    <message>
        <source>Nothing left changes the
verdict: end here?</source>
        <translation>Nada más cambia el
dictamen: ¿terminar aquí?</translation>
    </message>
    <message>
        <source>The run is over</source>
        <translation>La prueba ha terminado</translation>
    </message>
    <message>
        <source>Red lead to the
reference wire</source>
        <translation>Punta roja al cable
de referencia</translation>
    </message>
    <message>
        <source>Red lead to the
ground wire</source>
        <translation>Punta roja al cable
de masa</translation>
    </message>
    <message>
        <source>Red lead to the
signal wire</source>
        <translation>Punta roja al cable
de señal</translation>
    </message>
</context>
<context>
    <name>FindingText</name>
    <message>
        <source>1 dropout</source>
        <translation>1 corte</translation>
    </message>
    <message>
        <source>%1 dropouts</source>
        <translation>%1 cortes</translation>
    </message>
    <message>
        <source>%1 in %2 poses</source>
        <translation>%1 en %2 posturas</translation>
    </message>
    <message>
        <source>%1 leapt to %2 or more</source>
        <translation>%1 saltó a %2 o más</translation>
    </message>
    <message>
        <source>%1 fell to %2 or less</source>
        <translation>%1 cayó a %2 o menos</translation>
    </message>
    <message>
        <source>Moved by itself, once</source>
        <translation>Se movió solo, una vez</translation>
    </message>
    <message>
        <source>Moved by itself, %1 times</source>
        <translation>Se movió solo, %1 veces</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>None of %1 or longer</source>
        <translation>Ninguno de %1 o más largo</translation>
    </message>
    <message>
        <source>in 1 pose</source>
        <translation>en 1 postura</translation>
    </message>
    <message>
        <source>in %1 poses</source>
        <translation>en %1 posturas</translation>
    </message>
    <message>
        <source>Play, once</source>
        <translation>Holgura, una vez</translation>
    </message>
    <message>
        <source>Play, %1 times</source>
        <translation>Holgura, %1 veces</translation>
    </message>
    <message>
        <source>inside what the sheet allows</source>
        <translation>dentro de lo que permite la ficha</translation>
    </message>
    <message>
        <source>Reference and ground hold</source>
        <translation>Referencia y masa, bien</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 y %2</translation>
    </message>
    <message>
        <source>%1 outside its limits</source>
        <translation>%1 fuera de límites</translation>
    </message>
    <message>
        <source>%1 holds</source>
        <translation>%1: bien</translation>
    </message>
    <message>
        <source>%1 too near its limit</source>
        <translation>%1 demasiado justa</translation>
    </message>
    <message>
        <source>%1, this meter cannot decide</source>
        <translation>%1, este multímetro no decide</translation>
    </message>
    <message>
        <source>Ground</source>
        <translation>Masa</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>%1 · window %2 to %3</source>
        <translation>%1 · margen %2 a %3</translation>
    </message>
    <message>
        <source>%1 inside</source>
        <translation>%1: dentro</translation>
    </message>
    <message>
        <source>%1 outside</source>
        <translation>%1: fuera</translation>
    </message>
    <message>
        <source>%1 too near its edge</source>
        <translation>%1: demasiado justo</translation>
    </message>
    <message>
        <source>Blind for %1</source>
        <translation>Ciego durante %1</translation>
    </message>
    <message>
        <source>every end can sit well inside</source>
        <translation>cada extremo puede quedar bien dentro</translation>
    </message>
    <message>
        <source>no turn suits every end</source>
        <translation>ningún giro vale para todos los extremos</translation>
    </message>
    <message>
        <source>Cold and warm differ</source>
        <translation>Frío y caliente difieren</translation>
    </message>
    <message>
        <source>Cold and warm: no sure difference</source>
        <translation>Frío y caliente: sin diferencia segura</translation>
    </message>
    <message>
        <source>%1 of %2 poses cold, %3 of %4 warm</source>
        <translation>%1 de %2 posturas en frío, %3 de %4 en caliente</translation>
    </message>
    <message>
        <source>no step open</source>
        <translation>sin paso abierto</translation>
    </message>
    <message>
        <source>%1  %2 to %3</source>
        <translation>%1  %2 a %3</translation>
    </message>
    <message>
        <source>moved by itself</source>
        <translation>se movió solo</translation>
    </message>
    <message>
        <source>%1  blind for %2</source>
        <translation>%1  ciego durante %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>reference</source>
        <translation>referencia</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>masa</translation>
    </message>
    <message>
        <source>Reference unseen for %1</source>
        <translation>Referencia sin ver durante %1</translation>
    </message>
    <message>
        <source>Wants turning, up by %1</source>
        <translation>Pide giro: subir %1</translation>
    </message>
    <message>
        <source>Wants turning, down by %1</source>
        <translation>Pide giro: bajar %1</translation>
    </message>
    <message>
        <source>Set aside, once</source>
        <translation>Apartado, una vez</translation>
    </message>
    <message>
        <source>Set aside, %1 times</source>
        <translation>Apartado, %1 veces</translation>
    </message>
</context>
<context>
    <name>GlanceTaker</name>
    <message>
        <source>today %1</source>
        <translation>hoy a las %1</translation>
    </message>
    <message>
        <source>yesterday %1</source>
        <translation>ayer a las %1</translation>
    </message>
    <message>
        <source>%1 at %2</source>
        <translation>%1 a las %2</translation>
    </message>
</context>
<context>
    <name>KeyText</name>
    <message>
        <source>go on</source>
        <translation>seguir</translation>
    </message>
    <message>
        <source>back, or this step again</source>
        <translation>atrás, o este paso otra vez</translation>
    </message>
    <message>
        <source>skip the step, not tested</source>
        <translation>omitir el paso, sin probar</translation>
    </message>
    <message>
        <source>first answer</source>
        <translation>primera respuesta</translation>
    </message>
    <message>
        <source>second answer</source>
        <translation>segunda respuesta</translation>
    </message>
    <message>
        <source>third answer</source>
        <translation>tercera respuesta</translation>
    </message>
    <message>
        <source>fourth answer</source>
        <translation>cuarta respuesta</translation>
    </message>
    <message>
        <source>a part-turn made, one way</source>
        <translation>un toque dado, a un lado</translation>
    </message>
    <message>
        <source>a part-turn made, the other way</source>
        <translation>un toque dado, al otro lado</translation>
    </message>
    <message>
        <source>end the run here</source>
        <translation>terminar la prueba aquí</translation>
    </message>
    <message>
        <source>earlier</source>
        <translation>antes</translation>
    </message>
    <message>
        <source>later</source>
        <translation>después</translation>
    </message>
    <message>
        <source>a shorter time on show</source>
        <translation>mostrar menos tiempo</translation>
    </message>
    <message>
        <source>a longer time on show</source>
        <translation>mostrar más tiempo</translation>
    </message>
    <message>
        <source>the whole session</source>
        <translation>la sesión entera</translation>
    </message>
    <message>
        <source>follow the newest reading</source>
        <translation>seguir la última lectura</translation>
    </message>
    <message>
        <source>to the next finding</source>
        <translation>al hallazgo siguiente</translation>
    </message>
    <message>
        <source>to the finding before</source>
        <translation>al hallazgo anterior</translation>
    </message>
    <message>
        <source>open a capture</source>
        <translation>abrir una captura</translation>
    </message>
    <message>
        <source>save the running capture elsewhere</source>
        <translation>guardar la captura en curso en otro sitio</translation>
    </message>
    <message>
        <source>day or night</source>
        <translation>día o noche</translation>
    </message>
    <message>
        <source>full screen</source>
        <translation>pantalla completa</translation>
    </message>
    <message>
        <source>this page</source>
        <translation>esta página</translation>
    </message>
    <message>
        <source>back to the start page</source>
        <translation>volver a la página inicial</translation>
    </message>
    <message>
        <source>close the bench</source>
        <translation>cerrar el banco</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Espacio</translation>
    </message>
    <message>
        <source>Backspace</source>
        <translation>Retroceso</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Izquierda</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Derecha</translation>
    </message>
    <message>
        <source>Home</source>
        <translation>Inicio</translation>
    </message>
    <message>
        <source>End</source>
        <translation>Fin</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Shift</source>
        <translation>Mayús</translation>
    </message>
    <message>
        <source>Ctrl</source>
        <translation>Ctrl</translation>
    </message>
    <message>
        <source>mute all, and sound again</source>
        <translation>silenciar todo, y volver a sonar</translation>
    </message>
    <message>
        <source>a tone that follows the voltage</source>
        <translation>un tono que sigue la tensión</translation>
    </message>
    <message>
        <source>speak the prompts, or only show them</source>
        <translation>decir las indicaciones en voz alta, o solo mostrarlas</translation>
    </message>
    <message>
        <source>hide the verdict, and show it</source>
        <translation>ocultar el dictamen, y mostrarlo</translation>
    </message>
    <message>
        <source>lay the warm wiggle over the cold one</source>
        <translation>poner el meneo en caliente sobre el de en frío</translation>
    </message>
    <message>
        <source>make a dropout on the simulated meter</source>
        <translation>hacer un corte en el multímetro simulado</translation>
    </message>
    <message>
        <source>settings</source>
        <translation>ajustes</translation>
    </message>
    <message>
        <source>large words for three metres, and back</source>
        <translation>letras grandes para tres metros, y volver</translation>
    </message>
    <message>
        <source>every finding as a list, and back</source>
        <translation>todos los hallazgos en lista, y volver</translation>
    </message>
    <message>
        <source>show the capture in its folder</source>
        <translation>mostrar la captura en su carpeta</translation>
    </message>
</context>
<context>
    <name>PlaceText</name>
    <message>
        <source>%1 takes no capture. This run is recorded in %2: copy it from there.</source>
        <translation>%1 no admite capturas. Esta prueba se graba en %2: cópiela de ahí.</translation>
    </message>
</context>
<context>
    <name>StakeText</name>
    <message>
        <source>The led run ends here and cannot be taken up again.</source>
        <translation>La prueba guiada termina aquí y no se puede retomar.</translation>
    </message>
    <message>
        <source>The led run ends at step %1 of %2, %3, and cannot be taken up again.</source>
        <translation>La prueba guiada termina en el paso %1 de %2, %3, y no se puede retomar.</translation>
    </message>
    <message>
        <source>Not looked at then: %1.</source>
        <translation>Se quedaría sin mirar: %1.</translation>
    </message>
    <message>
        <source>Still wanted in this step: %1.</source>
        <translation>En este paso queda: %1.</translation>
    </message>
    <message>
        <source>In memory only, and lost unless it is saved elsewhere: %1 of readings.</source>
        <translation>Solo en memoria, y se pierde si no se guarda en otro sitio: %1 de lecturas.</translation>
    </message>
    <message>
        <source>What was recorded is kept: %1, %2 readings.</source>
        <translation>Lo grabado se conserva: %1, %2 lecturas.</translation>
    </message>
</context>
<context>
    <name>StripText</name>
    <message>
        <source> s</source>
        <translation> s</translation>
    </message>
    <message>
        <source>what the machine would do</source>
        <translation>lo que haría la máquina</translation>
    </message>
    <message>
        <source>what the machine would do · sure stops: %1</source>
        <translation>lo que haría la máquina · paradas seguras: %1</translation>
    </message>
    <message>
        <source>what the machine would do · possible stops: %1</source>
        <translation>lo que haría la máquina · paradas posibles: %1</translation>
    </message>
</context>
<context>
    <name>TellerText</name>
    <message>
        <source>The run is over. Verdict: %1.</source>
        <translation>La prueba ha terminado. Dictamen: %1.</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1: %2.</translation>
    </message>
</context>
<context>
    <name>WordText</name>
    <message>
        <source>Leapt</source>
        <translation>Saltó</translation>
    </message>
    <message>
        <source>by at least %1, and back</source>
        <translation>al menos %1, y volvió</translation>
    </message>
    <message>
        <source>Dropped</source>
        <translation>Cayó</translation>
    </message>
    <message>
        <source>by at least %1</source>
        <translation>al menos %1</translation>
    </message>
    <message>
        <source>hook-up</source>
        <translation>conexión</translation>
    </message>
    <message>
        <source>reference</source>
        <translation>referencia</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>masa</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>frío</translation>
    </message>
    <message>
        <source>shaft</source>
        <translation>eje</translation>
    </message>
    <message>
        <source>harness</source>
        <translation>mazo</translation>
    </message>
    <message>
        <source>press</source>
        <translation>posiciones</translation>
    </message>
    <message>
        <source>sweep</source>
        <translation>barrido</translation>
    </message>
    <message>
        <source>release</source>
        <translation>suelta</translation>
    </message>
    <message>
        <source>lift</source>
        <translation>tope</translation>
    </message>
    <message>
        <source>warm</source>
        <translation>caliente</translation>
    </message>
    <message>
        <source>adjust</source>
        <translation>ajuste</translation>
    </message>
    <message>
        <source>confirm</source>
        <translation>confirmar</translation>
    </message>
    <message>
        <source>put back</source>
        <translation>final</translation>
    </message>
    <message>
        <source>5 V wire</source>
        <translation>cable 5 V</translation>
    </message>
    <message>
        <source>ground wire</source>
        <translation>cable de masa</translation>
    </message>
    <message>
        <source>keep the sensor</source>
        <translation>conserve el sensor</translation>
    </message>
    <message>
        <source>adjust the sensor</source>
        <translation>ajuste el sensor</translation>
    </message>
    <message>
        <source>replace the sensor</source>
        <translation>cambie el sensor</translation>
    </message>
    <message>
        <source>check the wiring</source>
        <translation>mire el cableado</translation>
    </message>
    <message>
        <source>check the supply</source>
        <translation>mire la alimentación</translation>
    </message>
    <message>
        <source>check the linkage</source>
        <translation>mire el varillaje</translation>
    </message>
    <message>
        <source>cannot tell yet</source>
        <translation>aún no se sabe</translation>
    </message>
    <message>
        <source>quiet</source>
        <translation>reposo</translation>
    </message>
    <message>
        <source>wiggle</source>
        <translation>meneo</translation>
    </message>
    <message>
        <source>travel</source>
        <translation>recorrido</translation>
    </message>
    <message>
        <source>blind</source>
        <translation>ciego</translation>
    </message>
    <message>
        <source>lock the range on the meter</source>
        <translation>fije el rango del multímetro</translation>
    </message>
    <message>
        <source>no readings came: lead or meter?</source>
        <translation>no llegan lecturas: ¿cable o multímetro?</translation>
    </message>
    <message>
        <source>over its range: set a higher one</source>
        <translation>fuera de rango: ponga uno mayor</translation>
    </message>
    <message>
        <source>hold is on: switch it off</source>
        <translation>retención puesta: quítela</translation>
    </message>
    <message>
        <source>the same number: meter asleep?</source>
        <translation>el mismo número: ¿multímetro dormido?</translation>
    </message>
    <message>
        <source>set the meter to DC volts</source>
        <translation>ponga voltios de continua</translation>
    </message>
    <message>
        <source>Over 5.5 V</source>
        <translation>Más de 5.5 V</translation>
    </message>
    <message>
        <source>stop, key off</source>
        <translation>pare, quite el contacto</translation>
    </message>
    <message>
        <source>Steady</source>
        <translation>Estable</translation>
    </message>
    <message>
        <source>held at %1</source>
        <translation>mantenido en %1</translation>
    </message>
    <message>
        <source>Moving</source>
        <translation>Moviéndose</translation>
    </message>
    <message>
        <source>no level held yet</source>
        <translation>aún sin nivel fijo</translation>
    </message>
    <message>
        <source>no step asked for it</source>
        <translation>ningún paso lo pedía</translation>
    </message>
    <message>
        <source>from %1 to %2</source>
        <translation>de %1 a %2</translation>
    </message>
    <message>
        <source>Moved by itself</source>
        <translation>Se movió solo</translation>
    </message>
    <message>
        <source>Blind</source>
        <translation>Ciego</translation>
    </message>
    <message>
        <source>No reading</source>
        <translation>Sin lectura</translation>
    </message>
    <message>
        <source>waiting for the meter</source>
        <translation>esperando al multímetro</translation>
    </message>
    <message>
        <source>red lead to the reference wire</source>
        <translation>punta roja al cable de referencia</translation>
    </message>
    <message>
        <source>red lead on the reference wire</source>
        <translation>punta roja en el cable de referencia</translation>
    </message>
    <message>
        <source>red lead to the ground wire</source>
        <translation>punta roja al cable de masa</translation>
    </message>
    <message>
        <source>red lead on the ground wire</source>
        <translation>punta roja en el cable de masa</translation>
    </message>
    <message>
        <source>red lead to the signal wire</source>
        <translation>punta roja al cable de señal</translation>
    </message>
    <message>
        <source>red lead on the signal wire</source>
        <translation>punta roja en el cable de señal</translation>
    </message>
    <message>
        <source>Stop. Key off now.</source>
        <translation>Alto. Quite ya el contacto.</translation>
    </message>
    <message>
        <source>leads</source>
        <translation>puntas</translation>
    </message>
    <message>
        <source>plug held</source>
        <translation>conector quieto</translation>
    </message>
    <message>
        <source>Waiting</source>
        <translation>Espera</translation>
    </message>
    <message>
        <source>until the lead is on</source>
        <translation>hasta poner la punta</translation>
    </message>
</context>
<context>
    <name>core</name>
    <message>
        <source>%1 %2, good to %3: too close to the %4 limit to call.</source>
        <translation>%1: %2, con ±%3; demasiado cerca del límite de %4 para decidir.</translation>
    </message>
    <message>
        <source>%1 holds a line break or a control character</source>
        <translation>%1 contiene un salto de línea o un carácter de control</translation>
    </message>
    <message>
        <source>%1 holds something that is no number in its range</source>
        <translation>%1 contiene algo que no es un número de su rango</translation>
    </message>
    <message>
        <source>%1 holds something that is not text</source>
        <translation>%1 contiene algo que no es texto</translation>
    </message>
    <message>
        <source>%1 is %2, outside %3 to %4, and the mount has no adjustment: linkage, stop, or a wrong part.</source>
        <translation>%1 da %2, fuera de %3 a %4, y el soporte no tiene ajuste: varillaje, tope o pieza equivocada.</translation>
    </message>
    <message>
        <source>%1 is %2, too high</source>
        <translation>%1 es %2, demasiado alto</translation>
    </message>
    <message>
        <source>%1 is %2, too low</source>
        <translation>%1 es %2, demasiado bajo</translation>
    </message>
    <message>
        <source>%1 is back after %2; the capture went on with a gap</source>
        <translation>%1 ha vuelto tras %2; la captura siguió con un hueco</translation>
    </message>
    <message>
        <source>%1 is gone: put the cable back; the capture goes on by itself</source>
        <translation>%1 ha desaparecido: vuelva a poner el cable; la captura sigue sola</translation>
    </message>
    <message>
        <source>%1 is gone: put the cable back; the capture goes on by itself (%2)</source>
        <translation>%1 ha desaparecido: vuelva a poner el cable; la captura sigue sola (%2)</translation>
    </message>
    <message>
        <source>%1 is missing</source>
        <translation>falta %1</translation>
    </message>
    <message>
        <source>%1 is neither true nor false</source>
        <translation>%1 no es ni true ni false</translation>
    </message>
    <message>
        <source>%1 is not a list</source>
        <translation>%1 no es una lista</translation>
    </message>
    <message>
        <source>%1 is not a list of tables</source>
        <translation>%1 no es una lista de tablas</translation>
    </message>
    <message>
        <source>%1 is not a low and a high figure</source>
        <translation>%1 no es una cifra baja y una alta</translation>
    </message>
    <message>
        <source>%1 is not a number</source>
        <translation>%1 no es un número</translation>
    </message>
    <message>
        <source>%1 is not a short text</source>
        <translation>%1 no es un texto corto</translation>
    </message>
    <message>
        <source>%1 is not a table</source>
        <translation>%1 no es una tabla</translation>
    </message>
    <message>
        <source>%1 is not a whole number in its range</source>
        <translation>%1 no es un número entero de su rango</translation>
    </message>
    <message>
        <source>%1 is not a word we know</source>
        <translation>%1 no es una palabra conocida</translation>
    </message>
    <message>
        <source>%1 is not finite</source>
        <translation>%1 no es finito</translation>
    </message>
    <message>
        <source>%1 is not text</source>
        <translation>%1 no es texto</translation>
    </message>
    <message>
        <source>%1 more poses</source>
        <translation>faltan %1 posturas</translation>
    </message>
    <message>
        <source>%1 more positions</source>
        <translation>faltan %1 posiciones</translation>
    </message>
    <message>
        <source>%1 more releases</source>
        <translation>faltan %1 sueltas</translation>
    </message>
    <message>
        <source>%1 more seconds</source>
        <translation>faltan %1 segundos</translation>
    </message>
    <message>
        <source>%1 over %2, one every %3 s.</source>
        <translation>%1 en %2, una cada %3 s.</translation>
    </message>
    <message>
        <source>%1 over %2.</source>
        <translation>%1 en %2.</translation>
    </message>
    <message>
        <source>%1 poses</source>
        <translation>%1 posturas</translation>
    </message>
    <message>
        <source>%1 readings</source>
        <translation>%1 lecturas</translation>
    </message>
    <message>
        <source>%1 sure stops</source>
        <translation>%1 paradas seguras</translation>
    </message>
    <message>
        <source>%1 times</source>
        <translation>%1 veces</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>%1 to go</source>
        <translation>faltan %1</translation>
    </message>
    <message>
        <source>%1 visits</source>
        <translation>%1 visitas</translation>
    </message>
    <message>
        <source>%1 was %2 cold and %3 later. The cold reading counts.</source>
        <translation>%1 daba %2 en frío y %3 después. Cuenta la lectura en frío.</translation>
    </message>
    <message>
        <source>%1, judged by the sheet &quot;%2&quot;.</source>
        <translation>%1, juzgada con la ficha «%2».</translation>
    </message>
    <message>
        <source>%1, spread %2.</source>
        <translation>%1, dispersión %2.</translation>
    </message>
    <message>
        <source>%1, steps of %2, good to %3 %% + %4 counts</source>
        <translation>%1, pasos de %2, exactitud de %3 %% + %4 dígitos</translation>
    </message>
    <message>
        <source>%1: %2 held, but this meter cannot see the fault looked for.</source>
        <translation>%1: %2 mantenidas, pero este multímetro no puede ver el fallo buscado.</translation>
    </message>
    <message>
        <source>%1: %2, good to %3, inside %4 to %5.</source>
        <translation>%1: %2, con ±%3, dentro de %4 a %5.</translation>
    </message>
    <message>
        <source>%1: %2, good to %3, outside %4 to %5.</source>
        <translation>%1: %2, con ±%3, fuera de %4 a %5.</translation>
    </message>
    <message>
        <source>%1: %2, good to %3; window %4 to %5.</source>
        <translation>%1: %2, con ±%3; margen de %4 a %5.</translation>
    </message>
    <message>
        <source>%1: %2, good to %3; window %4 to %5: %6.</source>
        <translation>%1: %2, con ±%3; margen de %4 a %5: %6.</translation>
    </message>
    <message>
        <source>%1: aim_V lies outside the window</source>
        <translation>%1: aim_V está fuera del margen</translation>
    </message>
    <message>
        <source>%1: dropouts in %2 of %3.</source>
        <translation>%1: cortes en %2 de %3.</translation>
    </message>
    <message>
        <source>%1: no pose was looked at.</source>
        <translation>%1: no se miró ninguna postura.</translation>
    </message>
    <message>
        <source>%1: none of %2 or longer in %3.</source>
        <translation>%1: ninguno de %2 o más largo en %3.</translation>
    </message>
    <message>
        <source>%1: not measured; window %2 to %3.</source>
        <translation>%1: sin medir; margen de %2 a %3.</translation>
    </message>
    <message>
        <source>%1: resolution_V is not below full_scale_V</source>
        <translation>%1: resolution_V no está por debajo de full_scale_V</translation>
    </message>
    <message>
        <source>%1: the window is crossed, min_V %2 is not below max_V %3</source>
        <translation>%1: el margen está cruzado, min_V %2 no está por debajo de max_V %3</translation>
    </message>
    <message>
        <source>1 pose</source>
        <translation>1 postura</translation>
    </message>
    <message>
        <source>1 reading</source>
        <translation>1 lectura</translation>
    </message>
    <message>
        <source>1 sure stop</source>
        <translation>1 parada segura</translation>
    </message>
    <message>
        <source>1 time</source>
        <translation>1 vez</translation>
    </message>
    <message>
        <source>1 visit</source>
        <translation>1 visita</translation>
    </message>
    <message>
        <source>A bad ground lifts the low end and looks like a bad sensor.</source>
        <translation>Una mala masa sube el extremo bajo y parece un sensor malo.</translation>
    </message>
    <message>
        <source>A broken strand or a chafed wire follows the harness, not the shaft.</source>
        <translation>Un hilo partido o un cable rozado sigue al mazo, no al eje.</translation>
    </message>
    <message>
        <source>A dropout with nobody touching anything: %1 to %2 or further. Its cause is not known.</source>
        <translation>Un corte sin que nadie tocara nada: de %1 a %2 o más allá. No se conoce la causa.</translation>
    </message>
    <message>
        <source>A fault that goes away when warm is still a fault; one that comes when warm is news.</source>
        <translation>Un fallo que se va en caliente sigue siendo un fallo; uno que aparece en caliente es noticia.</translation>
    </message>
    <message>
        <source>A good sensor and a good spring come back to the same level each time.</source>
        <translation>Un buen sensor y un buen muelle vuelven al mismo nivel cada vez.</translation>
    </message>
    <message>
        <source>A single short dropout of the reference: %1 went to %2 or further.</source>
        <translation>Un solo corte breve de la referencia: %1 llegó a %2 o más allá.</translation>
    </message>
    <message>
        <source>A single short dropout on the ground wire: %1 went to %2 or further.</source>
        <translation>Un solo corte breve en el cable de masa: %1 llegó a %2 o más allá.</translation>
    </message>
    <message>
        <source>A single short dropout while the pedal was moved or held: %1 to %2 or further.</source>
        <translation>Un solo corte breve mientras se movía o sujetaba el pedal: de %1 a %2 o más allá.</translation>
    </message>
    <message>
        <source>A single short dropout with the harness moved: %1 went to %2 or further. One alone does not decide.</source>
        <translation>Un solo corte breve con el mazo movido: %1 llegó a %2 o más allá. Uno solo no decide.</translation>
    </message>
    <message>
        <source>A single short dropout with the shaft pushed: %1 went to %2 or further. One alone does not decide.</source>
        <translation>Un solo corte breve con el eje empujado: %1 llegó a %2 o más allá. Uno solo no decide.</translation>
    </message>
    <message>
        <source>A slow meter averages: depths are at least what is printed, and dropouts shorter than the meter can see stay unseen.</source>
        <translation>Un multímetro lento promedia: las profundidades son como mínimo las impresas, y los cortes más cortos de lo que puede ver quedan sin ver.</translation>
    </message>
    <message>
        <source>A worn spot shows at one place of the travel.</source>
        <translation>Un punto gastado se ve en un sitio del recorrido.</translation>
    </message>
    <message>
        <source>A worn track lets go of its slider under side load; the holds give a slow meter time to see it.</source>
        <translation>Una pista gastada suelta el cursor con carga lateral; al mantener, un multímetro lento tiene tiempo de verlo.</translation>
    </message>
    <message>
        <source>Adjustment</source>
        <translation>Ajuste</translation>
    </message>
    <message>
        <source>Advice</source>
        <translation>Consejo</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Después</translation>
    </message>
    <message>
        <source>After the work, by hand</source>
        <translation>Después del trabajo, a mano</translation>
    </message>
    <message>
        <source>Aim at %1 on the meter for &quot;%2&quot;, which makes %3 at the nominal reference.</source>
        <translation>Busque %1 en el multímetro para «%2», que son %3 con la referencia nominal.</translation>
    </message>
    <message>
        <source>Also seen</source>
        <translation>Visto además</translation>
    </message>
    <message>
        <source>Ambient temperature</source>
        <translation>Temperatura ambiente</translation>
    </message>
    <message>
        <source>An unsealed puncture lets water in, and a live connector can arc.</source>
        <translation>Una perforación sin sellar deja entrar agua, y un conector con tensión puede hacer arco.</translation>
    </message>
    <message>
        <source>And %1 more.</source>
        <translation>Y %1 más.</translation>
    </message>
    <message>
        <source>Assumed: %1</source>
        <translation>Supuesto: %1</translation>
    </message>
    <message>
        <source>At %1 (%2): from %3 down by at least %4, seen in %5.</source>
        <translation>A los %1 (%2): desde %3, cayó al menos %4, visto en %5.</translation>
    </message>
    <message>
        <source>At %1 (%2): from %3 up by at least %4, seen in %5.</source>
        <translation>A los %1 (%2): desde %3, subió al menos %4, visto en %5.</translation>
    </message>
    <message>
        <source>At %1 the level moved by itself from %2 to %3.</source>
        <translation>A los %1 el nivel se movió solo de %2 a %3.</translation>
    </message>
    <message>
        <source>Bands are the windows of the sheet; wedges are dropouts, hatching is time in which the meter was blind, broken lines begin a step.</source>
        <translation>Las bandas son los márgenes de la ficha; las cuñas son cortes, el rayado es tiempo con el multímetro ciego y las líneas discontinuas abren un paso.</translation>
    </message>
    <message>
        <source>Battery voltage has found its way onto this wire; more testing can harm the controller.</source>
        <translation>La tensión de batería ha llegado a este cable; seguir probando puede dañar el controlador.</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Antes</translation>
    </message>
    <message>
        <source>Bend one section of the harness and hold, as the pace says; touch neither sensor nor arm.</source>
        <translation>Doble un tramo del mazo y manténgalo, al ritmo indicado; no toque ni el sensor ni el brazo.</translation>
    </message>
    <message>
        <source>Black lead</source>
        <translation>Punta negra</translation>
    </message>
    <message>
        <source>Cannot tell yet.</source>
        <translation>Aún no se puede saber.</translation>
    </message>
    <message>
        <source>Capture</source>
        <translation>Captura</translation>
    </message>
    <message>
        <source>Cause found</source>
        <translation>Causa hallada</translation>
    </message>
    <message>
        <source>Clean poses still wanted: %1.</source>
        <translation>Posturas limpias que faltan: %1.</translation>
    </message>
    <message>
        <source>Codes read before, cleared after</source>
        <translation>Códigos leídos antes, borrados después</translation>
    </message>
    <message>
        <source>Cold %1 of %2 poses, warm %3 of %4: more than chance.</source>
        <translation>En frío %1 de %2 posturas, en caliente %3 de %4: más que casualidad.</translation>
    </message>
    <message>
        <source>Cold %1 of %2 poses, warm %3 of %4: the difference may be chance.</source>
        <translation>En frío %1 de %2 posturas, en caliente %3 de %4: la diferencia puede ser casualidad.</translation>
    </message>
    <message>
        <source>Cold, %1 was %2; later %3. The cold reading counts: a warm pass does not clear it.</source>
        <translation>En frío, %1 daba %2; después %3. Cuenta la lectura en frío: ir bien en caliente no la anula.</translation>
    </message>
    <message>
        <source>Complaint</source>
        <translation>Queja</translation>
    </message>
    <message>
        <source>Confirm the ends</source>
        <translation>Confirmar los extremos</translation>
    </message>
    <message>
        <source>Correction</source>
        <translation>Corrección</translation>
    </message>
    <message>
        <source>Date and time</source>
        <translation>Fecha y hora</translation>
    </message>
    <message>
        <source>Dropouts</source>
        <translation>Cortes</translation>
    </message>
    <message>
        <source>Dropouts shorter than %1: one of %2 shows with a chance of %3 %%.</source>
        <translation>Cortes de menos de %1: uno de %2 se ve con una probabilidad del %3 %%.</translation>
    </message>
    <message>
        <source>Each end must sit well inside its own window.</source>
        <translation>Cada extremo debe quedar bien dentro de su margen.</translation>
    </message>
    <message>
        <source>End here</source>
        <translation>Terminar aquí</translation>
    </message>
    <message>
        <source>Every level is a share of this voltage; if it is wrong, the sensor looks wrong.</source>
        <translation>Cada nivel es una parte de esta tensión; si está mal, el sensor parece malo.</translation>
    </message>
    <message>
        <source>First cold: %1.</source>
        <translation>Primera en frío: %1.</translation>
    </message>
    <message>
        <source>From key on to the cold look</source>
        <translation>Desde dar el contacto hasta la mirada en frío</translation>
    </message>
    <message>
        <source>Go on anyway</source>
        <translation>Seguir de todos modos</translation>
    </message>
    <message>
        <source>Go on once the red lead sits firmly.</source>
        <translation>Siga cuando la punta roja esté firme.</translation>
    </message>
    <message>
        <source>Ground</source>
        <translation>Masa</translation>
    </message>
    <message>
        <source>Ground: %1, good to %2; at most %3: %4.</source>
        <translation>Masa: %1, con ±%2; como mucho %3: %4.</translation>
    </message>
    <message>
        <source>Ground: not measured.</source>
        <translation>Masa: sin medir.</translation>
    </message>
    <message>
        <source>Hold it there and tighten evenly; watch that the reading stays.</source>
        <translation>Sujételo ahí y apriete por igual; vigile que la lectura no se mueva.</translation>
    </message>
    <message>
        <source>Hold the connector still and repeat the wiggle; then watch the reference and the ground wire under the same wiggle.</source>
        <translation>Sujete quieto el conector y repita el meneo; después vigile los cables de referencia y de masa con el mismo meneo.</translation>
    </message>
    <message>
        <source>Hold the connector still and wiggle the shaft again.</source>
        <translation>Sujete quieto el conector y menee otra vez el eje.</translation>
    </message>
    <message>
        <source>Hook up the meter</source>
        <translation>Conectar el multímetro</translation>
    </message>
    <message>
        <source>How it was measured</source>
        <translation>Cómo se midió</translation>
    </message>
    <message>
        <source>If the ground jumps under the same push, it is the wire and not the sensor.</source>
        <translation>Si la masa salta con el mismo empujón, es el cable y no el sensor.</translation>
    </message>
    <message>
        <source>If the reference drops under the same push, it is the wire and not the sensor.</source>
        <translation>Si la referencia cae con el mismo empujón, es el cable y no el sensor.</translation>
    </message>
    <message>
        <source>It changed by %1 between looks.</source>
        <translation>Cambió %1 entre una mirada y otra.</translation>
    </message>
    <message>
        <source>It had not come back at the end.</source>
        <translation>Al final aún no había vuelto.</translation>
    </message>
    <message>
        <source>It hung short %1 times.</source>
        <translation>Se quedó corto %1 veces.</translation>
    </message>
    <message>
        <source>It hung short once.</source>
        <translation>Se quedó corto una vez.</translation>
    </message>
    <message>
        <source>It speaks of what was touched while the meter watched, at the temperature of that day.</source>
        <translation>Habla de lo que se tocó mientras el multímetro miraba, a la temperatura de ese día.</translation>
    </message>
    <message>
        <source>It was off its stop</source>
        <translation>Estaba fuera de su tope</translation>
    </message>
    <message>
        <source>It was on its stop</source>
        <translation>Estaba en su tope</translation>
    </message>
    <message>
        <source>Keep off restraint and high-voltage wiring, often yellow or orange.</source>
        <translation>No toque el cableado de retención ni el de alta tensión, a menudo amarillo o naranja.</translation>
    </message>
    <message>
        <source>Keep the sensor.</source>
        <translation>Conserve el sensor.</translation>
    </message>
    <message>
        <source>Keep the tool off live terminals.</source>
        <translation>No toque con la herramienta terminales con tensión.</translation>
    </message>
    <message>
        <source>Key off first; then, and not before, unplug.</source>
        <translation>Primero quite el contacto; entonces, y no antes, desenchufe.</translation>
    </message>
    <message>
        <source>Key off, then look at the ground pin and its crimp.</source>
        <translation>Quite el contacto y mire el terminal de masa y su engaste.</translation>
    </message>
    <message>
        <source>Key off, then look at the reference pin and its crimp.</source>
        <translation>Quite el contacto y mire el terminal de referencia y su engaste.</translation>
    </message>
    <message>
        <source>Key off, then open the harness at %1 and look for a chafe or a broken strand.</source>
        <translation>Quite el contacto, abra el mazo en %1 y busque un roce o un hilo partido.</translation>
    </message>
    <message>
        <source>Key off, unplug, and isolate the three wires one by one.</source>
        <translation>Quite el contacto, desenchufe y aísle los tres cables uno a uno.</translation>
    </message>
    <message>
        <source>Key off. Look for a chafe to a battery feed before anything else.</source>
        <translation>Quite el contacto. Antes que nada, busque un roce con un positivo de batería.</translation>
    </message>
    <message>
        <source>Key on, engine off: nobody starts the engine, and one person keeps the key.</source>
        <translation>Contacto dado, motor parado: nadie arranca el motor, y una sola persona guarda la llave.</translation>
    </message>
    <message>
        <source>Leave the key on; the second look starts %1 minutes after key on.</source>
        <translation>Deje el contacto dado; la segunda mirada empieza %1 minutos después de darlo.</translation>
    </message>
    <message>
        <source>Leave the red lead on the reference wire and touch nothing.</source>
        <translation>Deje la punta roja en el cable de referencia y no toque nada.</translation>
    </message>
    <message>
        <source>Leave the red lead on the sensor&apos;s ground wire and touch nothing.</source>
        <translation>Deje la punta roja en el cable de masa del sensor y no toque nada.</translation>
    </message>
    <message>
        <source>Let it come back to &quot;%1&quot; by itself, hands off.</source>
        <translation>Deje que vuelva solo a «%1», sin tocar.</translation>
    </message>
    <message>
        <source>Let the machine stand cold, then record the first minute at rest, hands off.</source>
        <translation>Deje enfriar la máquina y grabe el primer minuto en reposo, sin tocar.</translation>
    </message>
    <message>
        <source>Level ground, brake on, wheels chocked, implement down, bystanders clear.</source>
        <translation>Suelo llano, freno puesto, ruedas calzadas, apero abajo, nadie cerca.</translation>
    </message>
    <message>
        <source>Level jumps: %1.</source>
        <translation>Saltos de nivel: %1.</translation>
    </message>
    <message>
        <source>Levels</source>
        <translation>Niveles</translation>
    </message>
    <message>
        <source>Levels before and after</source>
        <translation>Niveles antes y después</translation>
    </message>
    <message>
        <source>Limits of this report</source>
        <translation>Límites de este informe</translation>
    </message>
    <message>
        <source>Lock the meter&apos;s range on DC volts and wiggle on.</source>
        <translation>Fije el rango del multímetro en voltios de continua y siga meneando.</translation>
    </message>
    <message>
        <source>Look again when warm</source>
        <translation>Mirar otra vez en caliente</translation>
    </message>
    <message>
        <source>Look at the ground first, key off, then the signal pin.</source>
        <translation>Mire primero la masa, sin contacto, y luego el terminal de señal.</translation>
    </message>
    <message>
        <source>Look at the return spring, the pivot and the linkage, then release again.</source>
        <translation>Mire el muelle de retorno, el pivote y el varillaje, y suelte otra vez.</translation>
    </message>
    <message>
        <source>Look at the spring, the linkage and the part number first.</source>
        <translation>Mire primero el muelle, el varillaje y el número de pieza.</translation>
    </message>
    <message>
        <source>Look at the stop</source>
        <translation>Mirar el tope</translation>
    </message>
    <message>
        <source>Look at the stops, the lever and the part number.</source>
        <translation>Mire los topes, la palanca y el número de pieza.</translation>
    </message>
    <message>
        <source>Look at the supply of the reference first.</source>
        <translation>Mire primero la alimentación de la referencia.</translation>
    </message>
    <message>
        <source>Look at the wiring first.</source>
        <translation>Mire primero el cableado.</translation>
    </message>
    <message>
        <source>Loosen the sensor a little and turn it to the aim.</source>
        <translation>Afloje un poco el sensor y gírelo hasta el objetivo.</translation>
    </message>
    <message>
        <source>Loosen the sensor a little and turn it until the meter shows %1.</source>
        <translation>Afloje un poco el sensor y gírelo hasta que el multímetro marque %1.</translation>
    </message>
    <message>
        <source>Loosen, turn until the meter shows %1 %2, tighten, and measure every end again.</source>
        <translation>Afloje, gire hasta que el multímetro marque %1 en «%2», apriete y vuelva a medir cada extremo.</translation>
    </message>
    <message>
        <source>Machine, serial number, hours</source>
        <translation>Máquina, número de serie, horas</translation>
    </message>
    <message>
        <source>Measure %1 again with a better meter or on a finer range.</source>
        <translation>Mida otra vez «%1» con un multímetro mejor o en un rango más fino.</translation>
    </message>
    <message>
        <source>Measure every end before turning the sensor.</source>
        <translation>Mida cada extremo antes de girar el sensor.</translation>
    </message>
    <message>
        <source>Measure the drop along the ground wire, pin by pin, from the sensor to the controller.</source>
        <translation>Mida la caída a lo largo del cable de masa, terminal a terminal, del sensor al controlador.</translation>
    </message>
    <message>
        <source>Measure the ground</source>
        <translation>Medir la masa</translation>
    </message>
    <message>
        <source>Measure the ground drop on a finer range.</source>
        <translation>Mida la caída de masa en un rango más fino.</translation>
    </message>
    <message>
        <source>Measure the ground wire at the sensor against battery negative.</source>
        <translation>Mida el cable de masa en el sensor contra el negativo de batería.</translation>
    </message>
    <message>
        <source>Measure the reference</source>
        <translation>Medir la referencia</translation>
    </message>
    <message>
        <source>Measure the reference at the controller at the same time.</source>
        <translation>Mida a la vez la referencia en el controlador.</translation>
    </message>
    <message>
        <source>Measure the reference wire at the sensor, black lead where it is.</source>
        <translation>Mida el cable de referencia en el sensor, con la punta negra donde está.</translation>
    </message>
    <message>
        <source>Measure the reference with a better meter or on a finer range.</source>
        <translation>Mida la referencia con un multímetro mejor o en un rango más fino.</translation>
    </message>
    <message>
        <source>Meter</source>
        <translation>Multímetro</translation>
    </message>
    <message>
        <source>Meter model, last calibration</source>
        <translation>Modelo del multímetro, última calibración</translation>
    </message>
    <message>
        <source>Move slowly from end to end and back, without stopping.</source>
        <translation>Mueva despacio de un extremo a otro y vuelta, sin parar.</translation>
    </message>
    <message>
        <source>Move the red lead to the reference wire; leave the black lead where it is.</source>
        <translation>Pase la punta roja al cable de referencia; deje la negra donde está.</translation>
    </message>
    <message>
        <source>Move the red lead to the sensor&apos;s ground wire; leave the black lead where it is.</source>
        <translation>Pase la punta roja al cable de masa del sensor; deje la negra donde está.</translation>
    </message>
    <message>
        <source>Move the red lead to the signal wire; leave the black lead where it is.</source>
        <translation>Pase la punta roja al cable de señal; deje la negra donde está.</translation>
    </message>
    <message>
        <source>Move to &quot;%1&quot; and hold it there.</source>
        <translation>Vaya a «%1» y manténgalo ahí.</translation>
    </message>
    <message>
        <source>Move to each position again, now that the screws are tight.</source>
        <translation>Vaya otra vez a cada posición, ahora que los tornillos están apretados.</translation>
    </message>
    <message>
        <source>Move to each position in turn and hold it until it is read.</source>
        <translation>Vaya a cada posición por turno y manténgala hasta que se lea.</translation>
    </message>
    <message>
        <source>Never unplug a connector while the key is on.</source>
        <translation>Nunca desenchufe un conector con el contacto dado.</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Siguiente</translation>
    </message>
    <message>
        <source>Not tested</source>
        <translation>Sin probar</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notas</translation>
    </message>
    <message>
        <source>Nothing more to do.</source>
        <translation>Nada más que hacer.</translation>
    </message>
    <message>
        <source>Nothing was repeated warm.</source>
        <translation>No se repitió nada en caliente.</translation>
    </message>
    <message>
        <source>On its stop with a wrong level, it is the sensor; off its stop, the spring or the linkage comes first.</source>
        <translation>En su tope con un nivel malo, es el sensor; fuera de su tope, van primero el muelle o el varillaje.</translation>
    </message>
    <message>
        <source>On the machine: %1, and up to %2 that the averaged readings allow.</source>
        <translation>En la máquina: %1, y hasta %2 que las lecturas promediadas permiten.</translation>
    </message>
    <message>
        <source>One part-turn moved it by about %1; part-turns made: %2.</source>
        <translation>Un toque lo movió unos %1; toques dados: %2.</translation>
    </message>
    <message>
        <source>Part fitted, part number</source>
        <translation>Pieza montada, número de pieza</translation>
    </message>
    <message>
        <source>Pierced wire: where, how sealed</source>
        <translation>Cable perforado: dónde, cómo se selló</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Lugar</translation>
    </message>
    <message>
        <source>Play, which has no vote</source>
        <translation>Holgura, que no tiene voto</translation>
    </message>
    <message>
        <source>Poses while the meter was blind: %1.</source>
        <translation>Posturas con el multímetro ciego: %1.</translation>
    </message>
    <message>
        <source>Press and release</source>
        <translation>Pisar y soltar</translation>
    </message>
    <message>
        <source>Press and release, three times, and let it settle each time.</source>
        <translation>Pise y suelte tres veces, y deje que se asiente cada vez.</translation>
    </message>
    <message>
        <source>Press fully to %1 and hold it still.</source>
        <translation>Lleve del todo a «%1» y manténgalo quieto.</translation>
    </message>
    <message>
        <source>Press, hold, and let it come back by itself, again and again.</source>
        <translation>Pise, mantenga y deje que vuelva solo, una y otra vez.</translation>
    </message>
    <message>
        <source>Probe</source>
        <translation>Punta roja</translation>
    </message>
    <message>
        <source>Push the shaft sideways and hold, as the pace says, with the red lead on the ground wire.</source>
        <translation>Empuje el eje de lado y manténgalo, al ritmo indicado, con la punta roja en el cable de masa.</translation>
    </message>
    <message>
        <source>Push the shaft sideways and hold, as the pace says, with the red lead on the reference wire.</source>
        <translation>Empuje el eje de lado y manténgalo, al ritmo indicado, con la punta roja en el cable de referencia.</translation>
    </message>
    <message>
        <source>Put it back</source>
        <translation>Dejarlo como estaba</translation>
    </message>
    <message>
        <source>Range</source>
        <translation>Rango</translation>
    </message>
    <message>
        <source>Rate</source>
        <translation>Cadencia</translation>
    </message>
    <message>
        <source>Record again with the steps marked, or add the marks.</source>
        <translation>Grabe otra vez con los pasos marcados, o añada las marcas.</translation>
    </message>
    <message>
        <source>Record the level %1, hands off.</source>
        <translation>Grabe el nivel «%1», sin tocar.</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>Reference: %1, good to %2; limits %3 to %4: %5.</source>
        <translation>Referencia: %1, con ±%2; límites de %3 a %4: %5.</translation>
    </message>
    <message>
        <source>Reference: not measured.</source>
        <translation>Referencia: sin medir.</translation>
    </message>
    <message>
        <source>Relearn done, or not asked for</source>
        <translation>Reaprendizaje hecho, o no se pide</translation>
    </message>
    <message>
        <source>Release hydraulic and air pressure; blocks hold a load, hydraulics do not.</source>
        <translation>Quite la presión hidráulica y de aire; una carga la sujetan los tacos, no la hidráulica.</translation>
    </message>
    <message>
        <source>Released, it came back anywhere from %1 to %2, without spikes: spring, binding or slack first.</source>
        <translation>Al soltar volvió a cualquier punto de %1 a %2, sin picos: primero muelle, agarrotamiento u holgura.</translation>
    </message>
    <message>
        <source>Repeat the same place of the harness.</source>
        <translation>Repita el mismo sitio del mazo.</translation>
    </message>
    <message>
        <source>Repeat the same pose of the shaft.</source>
        <translation>Repita la misma postura del eje.</translation>
    </message>
    <message>
        <source>Repeat the shaft wiggle, as the pace says.</source>
        <translation>Repita el meneo del eje, al ritmo indicado.</translation>
    </message>
    <message>
        <source>Repeat the wiggle on the ground wire.</source>
        <translation>Repita el meneo en el cable de masa.</translation>
    </message>
    <message>
        <source>Repeat the wiggle on the reference wire.</source>
        <translation>Repita el meneo en el cable de referencia.</translation>
    </message>
    <message>
        <source>Replace the sensor.</source>
        <translation>Cambie el sensor.</translation>
    </message>
    <message>
        <source>Report of a three-wire position sensor, measured with the key on and the engine off.</source>
        <translation>Informe de un sensor de posición de tres cables, medido con el contacto dado y el motor parado.</translation>
    </message>
    <message>
        <source>SHA-256 of its readings</source>
        <translation>SHA-256 de sus lecturas</translation>
    </message>
    <message>
        <source>Sensor report: %1</source>
        <translation>Informe del sensor: %1</translation>
    </message>
    <message>
        <source>Sensor sheet</source>
        <translation>Ficha del sensor</translation>
    </message>
    <message>
        <source>Should be</source>
        <translation>Debe estar</translation>
    </message>
    <message>
        <source>Signature</source>
        <translation>Firma</translation>
    </message>
    <message>
        <source>Skipped: %1.</source>
        <translation>Omitido: %1.</translation>
    </message>
    <message>
        <source>Stop: over 5.5 V on the signal. Key off now.</source>
        <translation>Alto: más de 5.5 V en la señal. Quite ya el contacto.</translation>
    </message>
    <message>
        <source>Sweep again, the harness held still: a worn spot shows at the same place.</source>
        <translation>Vuelva a barrer con el mazo quieto: un punto gastado se ve en el mismo sitio.</translation>
    </message>
    <message>
        <source>Sweep slowly</source>
        <translation>Barrer despacio</translation>
    </message>
    <message>
        <source>Sweep slowly through the same place again.</source>
        <translation>Vuelva a barrer despacio por el mismo sitio.</translation>
    </message>
    <message>
        <source>Take about half a minute each way.</source>
        <translation>Tarde como medio minuto en cada sentido.</translation>
    </message>
    <message>
        <source>Take hands and feet off and let it rest.</source>
        <translation>Quite manos y pies y déjelo en reposo.</translation>
    </message>
    <message>
        <source>Take the leads off, seal a pierced wire against water, fit everything as the maker says, and run the relearn if the maker asks for one.</source>
        <translation>Quite las puntas, selle contra el agua el cable perforado, monte todo como dice el fabricante y haga el reaprendizaje si lo pide.</translation>
    </message>
    <message>
        <source>Technician</source>
        <translation>Técnico</translation>
    </message>
    <message>
        <source>The arm was on its stop: look at the sensor, then its mount.</source>
        <translation>El brazo estaba en su tope: mire el sensor y luego su soporte.</translation>
    </message>
    <message>
        <source>The capture</source>
        <translation>La captura</translation>
    </message>
    <message>
        <source>The capture does not say what was done when.</source>
        <translation>La captura no dice qué se hizo y cuándo.</translation>
    </message>
    <message>
        <source>The capture holds no readings.</source>
        <translation>La captura no tiene lecturas.</translation>
    </message>
    <message>
        <source>The first cold minutes are the evidence: warmth and movement can hide the fault.</source>
        <translation>Los primeros minutos en frío son la prueba: el calor y el movimiento pueden esconder el fallo.</translation>
    </message>
    <message>
        <source>The ground drop was not measured.</source>
        <translation>No se midió la caída de masa.</translation>
    </message>
    <message>
        <source>The ground drop, %1, good to %2, is too close to its limit to call.</source>
        <translation>La caída de masa, %1, con ±%2, está demasiado cerca de su límite para decidir.</translation>
    </message>
    <message>
        <source>The ground wire drops %1, more than the sheet allows: mend it before the sensor is tested or replaced.</source>
        <translation>El cable de masa cae %1, más de lo que permite la ficha: arréglelo antes de probar o cambiar el sensor.</translation>
    </message>
    <message>
        <source>The ground wire is %1 above battery negative, good to %2; at most %3 is allowed.</source>
        <translation>El cable de masa está %1 por encima del negativo de batería, con ±%2; se permite como mucho %3.</translation>
    </message>
    <message>
        <source>The level %1 was not measured.</source>
        <translation>No se midió el nivel «%1».</translation>
    </message>
    <message>
        <source>The lift check was not done.</source>
        <translation>No se miró el tope.</translation>
    </message>
    <message>
        <source>The maker&apos;s service literature and local rules come before anything said here.</source>
        <translation>El manual de servicio del fabricante y las normas locales van antes que lo que se dice aquí.</translation>
    </message>
    <message>
        <source>The maker&apos;s service literature comes before anything said here.</source>
        <translation>El manual de servicio del fabricante va antes que lo que se dice aquí.</translation>
    </message>
    <message>
        <source>The meter is not described: 1 % + 5 counts is assumed.</source>
        <translation>El multímetro no está descrito: se supone 1 % + 5 dígitos.</translation>
    </message>
    <message>
        <source>The meter was blind %1, for %2 in all.</source>
        <translation>El multímetro estuvo ciego %1, %2 en total.</translation>
    </message>
    <message>
        <source>The middle of the window leaves room for heat and wear at both ends.</source>
        <translation>El centro del margen deja sitio para el calor y el desgaste en ambos extremos.</translation>
    </message>
    <message>
        <source>The reference dropped once with nobody touching: %1 to %2 or further.</source>
        <translation>La referencia cayó una vez sin que nadie tocara: de %1 a %2 o más allá.</translation>
    </message>
    <message>
        <source>The reference dropped with nobody touching: %1 went to %2 or further.</source>
        <translation>La referencia cayó sin que nadie tocara: %1 llegó a %2 o más allá.</translation>
    </message>
    <message>
        <source>The reference is %1, good to %2; it should be %3 to %4.</source>
        <translation>La referencia es %1, con ±%2; debería estar entre %3 y %4.</translation>
    </message>
    <message>
        <source>The reference reads %1, outside its limits: find the cause before the sensor is tested or replaced.</source>
        <translation>La referencia da %1, fuera de sus límites: busque la causa antes de probar o cambiar el sensor.</translation>
    </message>
    <message>
        <source>The reference was not measured.</source>
        <translation>No se midió la referencia.</translation>
    </message>
    <message>
        <source>The reference, %1, good to %2, is too close to its limit to call.</source>
        <translation>La referencia, %1, con ±%2, está demasiado cerca de su límite para decidir.</translation>
    </message>
    <message>
        <source>The run is over; the verdict stands below.</source>
        <translation>La prueba ha terminado; el dictamen está abajo.</translation>
    </message>
    <message>
        <source>The sensor was turned, and the ends were not all confirmed after tightening.</source>
        <translation>Se giró el sensor y no se confirmaron todos los extremos después de apretar.</translation>
    </message>
    <message>
        <source>The signal stays near 0 V wherever the pedal is: open reference, open signal, or a short to ground.</source>
        <translation>La señal se queda cerca de 0 V esté donde esté el pedal: referencia abierta, señal abierta o un corto a masa.</translation>
    </message>
    <message>
        <source>The signal stays near the reference wherever the pedal is: open ground, a short to the reference, or an open signal wire.</source>
        <translation>La señal se queda cerca de la referencia esté donde esté el pedal: masa abierta, un corto a la referencia o el cable de señal abierto.</translation>
    </message>
    <message>
        <source>The sweep was not done.</source>
        <translation>No se hizo el barrido.</translation>
    </message>
    <message>
        <source>The trace over the windows of the sheet</source>
        <translation>El trazo sobre los márgenes de la ficha</translation>
    </message>
    <message>
        <source>There is no cold reading at rest.</source>
        <translation>No hay lectura en reposo y en frío.</translation>
    </message>
    <message>
        <source>This meter cannot see a dropout of half a volt here.</source>
        <translation>Este multímetro no puede ver aquí un corte de medio voltio.</translation>
    </message>
    <message>
        <source>This meter is too slow to see the fault looked for; the verdict will say so.</source>
        <translation>Este multímetro es demasiado lento para ver el fallo buscado; el dictamen lo dirá.</translation>
    </message>
    <message>
        <source>Tighten, work the pedal five times, then measure every end again.</source>
        <translation>Apriete, mueva el pedal cinco veces y vuelva a medir cada extremo.</translation>
    </message>
    <message>
        <source>Tightening moves the reading.</source>
        <translation>Al apretar se mueve la lectura.</translation>
    </message>
    <message>
        <source>To tell: %1</source>
        <translation>Para saberlo: %1</translation>
    </message>
    <message>
        <source>Torque, thread locker</source>
        <translation>Par de apriete, fijador de roscas</translation>
    </message>
    <message>
        <source>Trace</source>
        <translation>Trazo</translation>
    </message>
    <message>
        <source>Trace it cold: measure on both sides of the connector pin in the first minutes of the day.</source>
        <translation>Búsquelo en frío: mida a ambos lados del terminal del conector en los primeros minutos del día.</translation>
    </message>
    <message>
        <source>Tried on a cold morning</source>
        <translation>Probado una mañana fría</translation>
    </message>
    <message>
        <source>Turn the key off and wait for the controller to shut down; unplug nothing yet.</source>
        <translation>Quite el contacto y espere a que el controlador se apague; aún no desenchufe nada.</translation>
    </message>
    <message>
        <source>Turn the sensor</source>
        <translation>Girar el sensor</translation>
    </message>
    <message>
        <source>Turn the sensor to its aim and confirm.</source>
        <translation>Gire el sensor hasta su objetivo y confirme.</translation>
    </message>
    <message>
        <source>Unplug the other sensors on this reference one by one, key off each time, and watch it come back; then measure it at the controller.</source>
        <translation>Desenchufe uno a uno los otros sensores de esta referencia, sin contacto cada vez, y mire si se recupera; luego mídala en el controlador.</translation>
    </message>
    <message>
        <source>Use a meter with a finer range or less noise.</source>
        <translation>Use un multímetro con un rango más fino o con menos ruido.</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Dictamen</translation>
    </message>
    <message>
        <source>Visit every position</source>
        <translation>Visitar cada posición</translation>
    </message>
    <message>
        <source>Warning: %1</source>
        <translation>Aviso: %1</translation>
    </message>
    <message>
        <source>Watch it cold</source>
        <translation>Mirarlo en frío</translation>
    </message>
    <message>
        <source>Watch the reference for longer, with the other sensors on it unplugged one by one, key off each time.</source>
        <translation>Vigile la referencia más tiempo, desenchufando uno a uno los otros sensores que cuelgan de ella, sin contacto cada vez.</translation>
    </message>
    <message>
        <source>Wear eye protection near the battery, and make no sparks.</source>
        <translation>Protéjase los ojos cerca de la batería y no haga chispas.</translation>
    </message>
    <message>
        <source>When it hangs again, see whether the arm is on its stop.</source>
        <translation>Cuando se quede corto otra vez, mire si el brazo está en su tope.</translation>
    </message>
    <message>
        <source>Where its figures come from</source>
        <translation>De dónde salen sus cifras</translation>
    </message>
    <message>
        <source>Wiggle the harness</source>
        <translation>Menear el mazo</translation>
    </message>
    <message>
        <source>Wiggle the harness in short sections until one of them brings it back.</source>
        <translation>Menee el mazo por tramos cortos hasta que uno lo repita.</translation>
    </message>
    <message>
        <source>Wiggle the shaft</source>
        <translation>Menear el eje</translation>
    </message>
    <message>
        <source>Wiggles</source>
        <translation>Meneos</translation>
    </message>
    <message>
        <source>Without moving the arm, look whether it rests against its stop, then lift it a little by hand.</source>
        <translation>Sin mover el brazo, mire si descansa en su tope; luego levántelo un poco con la mano.</translation>
    </message>
    <message>
        <source>[%1] is missing</source>
        <translation>falta [%1]</translation>
    </message>
    <message>
        <source>a bit lacks at, mask or means</source>
        <translation>a un bit le falta at, mask o means</translation>
    </message>
    <message>
        <source>a display that shows no number: a frame was damaged</source>
        <translation>una pantalla sin número: se dañó una trama</translation>
    </message>
    <message>
        <source>a fault has neither kind nor place</source>
        <translation>un fallo no tiene ni kind ni place</translation>
    </message>
    <message>
        <source>a few more steady readings</source>
        <translation>faltan unas lecturas estables</translation>
    </message>
    <message>
        <source>a frame of %1 characters in place of %2</source>
        <translation>una trama de %1 caracteres en lugar de %2</translation>
    </message>
    <message>
        <source>a frame of kind ascii has no layout</source>
        <translation>una trama de clase ascii no tiene disposición</translation>
    </message>
    <message>
        <source>a key has too many dots</source>
        <translation>una clave tiene demasiados puntos</translation>
    </message>
    <message>
        <source>a line of more than 512 bytes: wrong baud rate, or another kind of meter</source>
        <translation>una línea de más de 512 bytes: baudios equivocados u otra clase de multímetro</translation>
    </message>
    <message>
        <source>a part of the path is no folder</source>
        <translation>una parte de la ruta no es una carpeta</translation>
    </message>
    <message>
        <source>a quote opens here that is never closed</source>
        <translation>aquí se abren unas comillas que no se cierran</translation>
    </message>
    <message>
        <source>a range character that the layout does not list: %1</source>
        <translation>un carácter de rango que la disposición no recoge: %1</translation>
    </message>
    <message>
        <source>a range is named by more than one character</source>
        <translation>un rango tiene un nombre de más de un carácter</translation>
    </message>
    <message>
        <source>a report is written as .html</source>
        <translation>un informe se escribe como .html</translation>
    </message>
    <message>
        <source>a row is longer than 64 KB, or a quote is never closed</source>
        <translation>una fila pasa de 64 KB, o unas comillas no se cierran</translation>
    </message>
    <message>
        <source>a unit that is not known: %1</source>
        <translation>una unidad desconocida: %1</translation>
    </message>
    <message>
        <source>add %1 = &quot;…&quot;</source>
        <translation>añada %1 = &quot;…&quot;</translation>
    </message>
    <message>
        <source>add %1 = …</source>
        <translation>añada %1 = …</translation>
    </message>
    <message>
        <source>add [frame.layout.range] with &quot;0&quot; = -3 and so on</source>
        <translation>añada [frame.layout.range] con &quot;0&quot; = -3 y así</translation>
    </message>
    <message>
        <source>add [frame.layout] with length, digits_at and digits</source>
        <translation>añada [frame.layout] con length, digits_at y digits</translation>
    </message>
    <message>
        <source>add dc_volts with the characters that mean DC volts</source>
        <translation>añada dc_volts con los caracteres que significan voltios de continua</translation>
    </message>
    <message>
        <source>add one for each end of the travel</source>
        <translation>añada una por cada extremo del recorrido</translation>
    </message>
    <message>
        <source>add the table</source>
        <translation>añada la tabla</translation>
    </message>
    <message>
        <source>add yourself to the dialout group: sudo usermod -aG dialout $USER, then log in again</source>
        <translation>añádase al grupo dialout: sudo usermod -aG dialout $USER, y vuelva a iniciar sesión</translation>
    </message>
    <message>
        <source>aim between min_V and max_V</source>
        <translation>ponga el objetivo entre min_V y max_V</translation>
    </message>
    <message>
        <source>another program holds the port</source>
        <translation>otro programa ocupa el puerto</translation>
    </message>
    <message>
        <source>another program holds the port (%1)</source>
        <translation>otro programa ocupa el puerto (%1)</translation>
    </message>
    <message>
        <source>at most %1</source>
        <translation>como mucho %1</translation>
    </message>
    <message>
        <source>battery negative</source>
        <translation>negativo de batería</translation>
    </message>
    <message>
        <source>black is neither battery-negative nor sensor-ground</source>
        <translation>black no es ni battery-negative ni sensor-ground</translation>
    </message>
    <message>
        <source>bytes come from %1 but no reading: %2; check %3 baud and the meter description</source>
        <translation>llegan bytes de %1 pero ninguna lectura: %2; revise los %3 baudios y la descripción del multímetro</translation>
    </message>
    <message>
        <source>bytes of a frame are missing</source>
        <translation>faltan bytes de una trama</translation>
    </message>
    <message>
        <source>bytes that are no LCD-segment frame: check baud rate and kind</source>
        <translation>bytes que no son una trama de segmentos LCD: revise los baudios y la clase</translation>
    </message>
    <message>
        <source>cannot be opened: %1</source>
        <translation>no se puede abrir: %1</translation>
    </message>
    <message>
        <source>cannot create it: %1</source>
        <translation>no se puede crear: %1</translation>
    </message>
    <message>
        <source>cannot open it: %1</source>
        <translation>no se puede abrir: %1</translation>
    </message>
    <message>
        <source>cannot read it: %1</source>
        <translation>no se puede leer: %1</translation>
    </message>
    <message>
        <source>cannot save it: %1</source>
        <translation>no se puede guardar: %1</translation>
    </message>
    <message>
        <source>cannot write it anew: %1</source>
        <translation>no se puede volver a escribir: %1</translation>
    </message>
    <message>
        <source>cannot write it: %1</source>
        <translation>no se puede escribir: %1</translation>
    </message>
    <message>
        <source>cautions: text holds something that is no text</source>
        <translation>cautions: text contiene algo que no es texto</translation>
    </message>
    <message>
        <source>cautions: text is not a list of texts</source>
        <translation>cautions: text no es una lista de textos</translation>
    </message>
    <message>
        <source>change its permissions or use another folder</source>
        <translation>cambie sus permisos o use otra carpeta</translation>
    </message>
    <message>
        <source>check length, digits_at and digits</source>
        <translation>revise length, digits_at y digits</translation>
    </message>
    <message>
        <source>check the cable and flow control</source>
        <translation>revise el cable y el control de flujo</translation>
    </message>
    <message>
        <source>check the name and the folder</source>
        <translation>revise el nombre y la carpeta</translation>
    </message>
    <message>
        <source>check the path</source>
        <translation>revise la ruta</translation>
    </message>
    <message>
        <source>check the path and its permissions</source>
        <translation>revise la ruta y sus permisos</translation>
    </message>
    <message>
        <source>choose a capture or another CSV</source>
        <translation>elija una captura u otro CSV</translation>
    </message>
    <message>
        <source>choose a shorter one</source>
        <translation>elija uno más corto</translation>
    </message>
    <message>
        <source>choose another name</source>
        <translation>elija otro nombre</translation>
    </message>
    <message>
        <source>choose one with --meter</source>
        <translation>elija una con --meter</translation>
    </message>
    <message>
        <source>close it or remove it</source>
        <translation>ciérrelas o quítelas</translation>
    </message>
    <message>
        <source>close it; &quot;sudo fuser -v %1&quot; names it</source>
        <translation>ciérrelo; «sudo fuser -v %1» dice cuál es</translation>
    </message>
    <message>
        <source>controller side of the connector</source>
        <translation>lado del controlador del conector</translation>
    </message>
    <message>
        <source>correct [link] there, or use another adapter</source>
        <translation>corrija [link] ahí, o use otro adaptador</translation>
    </message>
    <message>
        <source>correct nominal_V or the limits</source>
        <translation>corrija nominal_V o los límites</translation>
    </message>
    <message>
        <source>correct that line</source>
        <translation>corrija esa línea</translation>
    </message>
    <message>
        <source>correct the row or remove it</source>
        <translation>corrija la fila o quítela</translation>
    </message>
    <message>
        <source>count times from the start of the capture</source>
        <translation>cuente los tiempos desde el inicio de la captura</translation>
    </message>
    <message>
        <source>drive: none_at_V and full_at_V are the same</source>
        <translation>drive: none_at_V y full_at_V son iguales</translation>
    </message>
    <message>
        <source>exists already and is never overwritten</source>
        <translation>ya existe y nunca se sobrescribe</translation>
    </message>
    <message>
        <source>fewer than two [[position]] tables</source>
        <translation>menos de dos tablas [[position]]</translation>
    </message>
    <message>
        <source>format %1 is newer than this program reads (%2)</source>
        <translation>el formato %1 es más nuevo que el que lee este programa (%2)</translation>
    </message>
    <message>
        <source>format %1 is newer than this program reads (%2); what it does not know was left out</source>
        <translation>el formato %1 es más nuevo que el que lee este programa (%2); lo que no conoce se dejó fuera</translation>
    </message>
    <message>
        <source>format is not a number from 1 up</source>
        <translation>format no es un número desde 1</translation>
    </message>
    <message>
        <source>free some space or go on in another folder</source>
        <translation>libere espacio o siga en otra carpeta</translation>
    </message>
    <message>
        <source>function_at names a character without meanings</source>
        <translation>function_at señala un carácter sin significados</translation>
    </message>
    <message>
        <source>give -o a name that ends in .html, and print it from there</source>
        <translation>dé a -o un nombre que acabe en .html e imprímalo desde ahí</translation>
    </message>
    <message>
        <source>give a file</source>
        <translation>indique un archivo</translation>
    </message>
    <message>
        <source>give a path to a .toml file</source>
        <translation>dé la ruta de un archivo .toml</translation>
    </message>
    <message>
        <source>give a path to a .toml file, or one of: %1</source>
        <translation>dé la ruta de un archivo .toml, o uno de estos: %1</translation>
    </message>
    <message>
        <source>give all three</source>
        <translation>dé los tres</translation>
    </message>
    <message>
        <source>give both ends</source>
        <translation>dé ambos extremos</translation>
    </message>
    <message>
        <source>give each its own name</source>
        <translation>dé a cada una su nombre</translation>
    </message>
    <message>
        <source>give kind = &quot;dirty-spot&quot;, or a place</source>
        <translation>dé kind = &quot;dirty-spot&quot;, o un place</translation>
    </message>
    <message>
        <source>give one level for each</source>
        <translation>dé un nivel para cada una</translation>
    </message>
    <message>
        <source>give the two ends of the drive</source>
        <translation>dé los dos extremos del accionamiento</translation>
    </message>
    <message>
        <source>ground: %1, half of the allowed drop, not measured</source>
        <translation>masa: %1, la mitad de la caída permitida, sin medir</translation>
    </message>
    <message>
        <source>has no sensor sheet in its header</source>
        <translation>no tiene ficha de sensor en su cabecera</translation>
    </message>
    <message>
        <source>header: %1</source>
        <translation>cabecera: %1</translation>
    </message>
    <message>
        <source>hold is on, so the number stands still: press the hold key</source>
        <translation>la retención está puesta y el número no cambia: pulse la tecla de retención</translation>
    </message>
    <message>
        <source>hold left</source>
        <translation>a la izquierda</translation>
    </message>
    <message>
        <source>hold right</source>
        <translation>a la derecha</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>dentro</translation>
    </message>
    <message>
        <source>is a folder</source>
        <translation>es una carpeta</translation>
    </message>
    <message>
        <source>keep those that are there in fact</source>
        <translation>deje las que haya de verdad</translation>
    </message>
    <message>
        <source>known are: %1</source>
        <translation>se conocen: %1</translation>
    </message>
    <message>
        <source>leave it at the one where the sensor rests</source>
        <translation>déjelo en la que el sensor reposa</translation>
    </message>
    <message>
        <source>levels for %1 positions, the sheet has %2</source>
        <translation>niveles para %1 posiciones; la ficha tiene %2</translation>
    </message>
    <message>
        <source>line %1 is the last and has no end: it was torn off and left out</source>
        <translation>la línea %1 es la última y no tiene fin: se cortó y se dejó fuera</translation>
    </message>
    <message>
        <source>lock the meter&apos;s range: it went blind for %1</source>
        <translation>fije el rango del multímetro: se quedó ciego %1</translation>
    </message>
    <message>
        <source>marks are written into captures only</source>
        <translation>las marcas solo se escriben en capturas</translation>
    </message>
    <message>
        <source>meter accuracy: 1 %% + 5 counts</source>
        <translation>exactitud del multímetro: 1 %% + 5 dígitos</translation>
    </message>
    <message>
        <source>more than 100 [[%1]] tables</source>
        <translation>más de 100 tablas [[%1]]</translation>
    </message>
    <message>
        <source>name one with --sheet (`stillwire sheets` lists them)</source>
        <translation>indique una con --sheet (`stillwire sheets` las enumera)</translation>
    </message>
    <message>
        <source>nest at most a few tables</source>
        <translation>anide como mucho unas pocas tablas</translation>
    </message>
    <message>
        <source>no fault is called &apos;%1&apos;</source>
        <translation>ningún fallo se llama «%1»</translation>
    </message>
    <message>
        <source>no key &apos;%1&apos; belongs here</source>
        <translation>aquí no va la clave «%1»</translation>
    </message>
    <message>
        <source>no number in %1</source>
        <translation>no hay número en %1</translation>
    </message>
    <message>
        <source>no step is called &apos;%1&apos;</source>
        <translation>ningún paso se llama «%1»</translation>
    </message>
    <message>
        <source>no such name among the %1</source>
        <translation>ese nombre no está entre: %1</translation>
    </message>
    <message>
        <source>no time and volts columns found</source>
        <translation>no hay columnas de tiempo y de voltios</translation>
    </message>
    <message>
        <source>none: not a capture of this program</source>
        <translation>ninguno: no es una captura de este programa</translation>
    </message>
    <message>
        <source>not TOML: %1</source>
        <translation>no es TOML: %1</translation>
    </message>
    <message>
        <source>not a reading: %1</source>
        <translation>no es una lectura: %1</translation>
    </message>
    <message>
        <source>not allowed to create it</source>
        <translation>no hay permiso para crearlo</translation>
    </message>
    <message>
        <source>not allowed to open it</source>
        <translation>no hay permiso para abrirlo</translation>
    </message>
    <message>
        <source>not allowed to read it</source>
        <translation>no hay permiso para leerlo</translation>
    </message>
    <message>
        <source>not allowed to save it</source>
        <translation>no hay permiso para guardarlo</translation>
    </message>
    <message>
        <source>not allowed to write a new file beside it</source>
        <translation>no hay permiso para escribir un archivo nuevo al lado</translation>
    </message>
    <message>
        <source>not allowed to write it</source>
        <translation>no hay permiso para escribirlo</translation>
    </message>
    <message>
        <source>not described; accuracy of 1 % + 5 counts assumed</source>
        <translation>sin descripción; se supone una exactitud de 1 % + 5 dígitos</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>se desconoce</translation>
    </message>
    <message>
        <source>not measured</source>
        <translation>sin medir</translation>
    </message>
    <message>
        <source>not said in the sheet</source>
        <translation>no lo dice la ficha</translation>
    </message>
    <message>
        <source>not text: %1; check the baud rate</source>
        <translation>no es texto: %1; revise los baudios</translation>
    </message>
    <message>
        <source>not text: %1; check the baud rate and the bits</source>
        <translation>no es texto: %1; revise los baudios y los bits</translation>
    </message>
    <message>
        <source>not turned</source>
        <translation>sin girar</translation>
    </message>
    <message>
        <source>nothing comes from the meter on %1: switch it on, press its data-output key, and check the cable and %2 baud</source>
        <translation>no llega nada del multímetro de %1: enciéndalo, pulse su tecla de salida de datos y revise el cable y los %2 baudios</translation>
    </message>
    <message>
        <source>nothing comes from the meter on %1: switch it on, set it to remote, and check the cable and %2 baud</source>
        <translation>no llega nada del multímetro de %1: enciéndalo, póngalo en remoto y revise el cable y los %2 baudios</translation>
    </message>
    <message>
        <source>one more pose</source>
        <translation>falta una postura</translation>
    </message>
    <message>
        <source>one reading every %1 s</source>
        <translation>una lectura cada %1 s</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>fuera</translation>
    </message>
    <message>
        <source>outside the steps</source>
        <translation>fuera de los pasos</translation>
    </message>
    <message>
        <source>plug the adapter in; &quot;stillwire ports&quot; lists what is there</source>
        <translation>enchufe el adaptador; «stillwire ports» enumera lo que hay</translation>
    </message>
    <message>
        <source>probe is neither sensor-side nor controller-side</source>
        <translation>probe no es ni sensor-side ni controller-side</translation>
    </message>
    <message>
        <source>put (?P&lt;value&gt;...) around it</source>
        <translation>rodéela con (?P&lt;value&gt;...)</translation>
    </message>
    <message>
        <source>put it in quotes</source>
        <translation>póngalo entre comillas</translation>
    </message>
    <message>
        <source>put the lower limit in min_V and the higher in max_V</source>
        <translation>ponga el límite bajo en min_V y el alto en max_V</translation>
    </message>
    <message>
        <source>range_at names a character without meanings</source>
        <translation>range_at señala un carácter sin significados</translation>
    </message>
    <message>
        <source>reference: %1, the nominal, not measured</source>
        <translation>referencia: %1, la nominal, sin medir</translation>
    </message>
    <message>
        <source>reference: nominal_V lies outside min_V to max_V</source>
        <translation>reference: nominal_V está fuera de min_V a max_V</translation>
    </message>
    <message>
        <source>reinstall the OpenSSL library</source>
        <translation>reinstale la biblioteca OpenSSL</translation>
    </message>
    <message>
        <source>remove the row or split the file there</source>
        <translation>quite la fila o parta el archivo ahí</translation>
    </message>
    <message>
        <source>resolution_V is the step of the last digit</source>
        <translation>resolution_V es el paso del último dígito</translation>
    </message>
    <message>
        <source>save the import as a capture first</source>
        <translation>guarde antes la importación como captura</translation>
    </message>
    <message>
        <source>section %1, hold left</source>
        <translation>tramo %1, izquierda</translation>
    </message>
    <message>
        <source>section %1, hold right</source>
        <translation>tramo %1, derecha</translation>
    </message>
    <message>
        <source>see meters/bench/README.md for their names</source>
        <translation>sus nombres están en meters/bench/README.md</translation>
    </message>
    <message>
        <source>sensor ground</source>
        <translation>masa del sensor</translation>
    </message>
    <message>
        <source>sensor side of the connector</source>
        <translation>lado del sensor del conector</translation>
    </message>
    <message>
        <source>sheet is not a table</source>
        <translation>sheet no es una tabla</translation>
    </message>
    <message>
        <source>shorten it</source>
        <translation>acórtelo</translation>
    </message>
    <message>
        <source>tables are nested too deep</source>
        <translation>las tablas están anidadas demasiado hondo</translation>
    </message>
    <message>
        <source>the TOML text is larger than 4 MB</source>
        <translation>el texto TOML pasa de 4 MB</translation>
    </message>
    <message>
        <source>the adapter is back as %1 after %2; the capture went on with a gap</source>
        <translation>el adaptador ha vuelto como %1 tras %2; la captura siguió con un hueco</translation>
    </message>
    <message>
        <source>the columns that were named are not there</source>
        <translation>las columnas indicadas no están</translation>
    </message>
    <message>
        <source>the computer slept for %1; the capture has a gap there</source>
        <translation>el ordenador durmió %1; la captura tiene ahí un hueco</translation>
    </message>
    <message>
        <source>the digits do not lie within the frame</source>
        <translation>los dígitos no caben en la trama</translation>
    </message>
    <message>
        <source>the disk fails</source>
        <translation>el disco falla</translation>
    </message>
    <message>
        <source>the disk is full</source>
        <translation>el disco está lleno</translation>
    </message>
    <message>
        <source>the disk is read-only</source>
        <translation>el disco es de solo lectura</translation>
    </message>
    <message>
        <source>the file is empty</source>
        <translation>el archivo está vacío</translation>
    </message>
    <message>
        <source>the hash could not be computed</source>
        <translation>no se pudo calcular la huella</translation>
    </message>
    <message>
        <source>the line of columns has no end; no row follows it</source>
        <translation>la línea de columnas no tiene fin; no le sigue ninguna fila</translation>
    </message>
    <message>
        <source>the lines behind # are not a capture header and were taken as notes</source>
        <translation>las líneas con # no son una cabecera de captura y se tomaron como notas</translation>
    </message>
    <message>
        <source>the meter does not show DC volts: turn it to DC volts, relative mode off</source>
        <translation>el multímetro no muestra voltios de continua: póngalo en voltios de continua, sin modo relativo</translation>
    </message>
    <message>
        <source>the meter does not take commands</source>
        <translation>el multímetro no acepta órdenes</translation>
    </message>
    <message>
        <source>the meter shows overload: choose a range that holds 6 V, and check the leads</source>
        <translation>el multímetro marca sobrecarga: elija un rango donde quepan 6 V y revise las puntas</translation>
    </message>
    <message>
        <source>the meter&apos;s battery is low: change it, its numbers cannot be trusted</source>
        <translation>la pila del multímetro está baja: cámbiela, sus números no son de fiar</translation>
    </message>
    <message>
        <source>the name is too long</source>
        <translation>el nombre es demasiado largo</translation>
    </message>
    <message>
        <source>the pattern does not find %1</source>
        <translation>el patrón no encuentra %1</translation>
    </message>
    <message>
        <source>the pattern does not say which part is the value</source>
        <translation>el patrón no dice qué parte es el valor</translation>
    </message>
    <message>
        <source>the pattern is not a regular expression: %1</source>
        <translation>el patrón no es una expresión regular: %1</translation>
    </message>
    <message>
        <source>the port does not open: %1</source>
        <translation>el puerto no se abre: %1</translation>
    </message>
    <message>
        <source>the port refuses the DTR level of the meter description</source>
        <translation>el puerto rechaza el nivel DTR de la descripción del multímetro</translation>
    </message>
    <message>
        <source>the port refuses the RTS level of the meter description</source>
        <translation>el puerto rechaza el nivel RTS de la descripción del multímetro</translation>
    </message>
    <message>
        <source>the port refuses the baud rate of the meter description</source>
        <translation>el puerto rechaza los baudios de la descripción del multímetro</translation>
    </message>
    <message>
        <source>the port refuses the data bits of the meter description</source>
        <translation>el puerto rechaza los bits de datos de la descripción del multímetro</translation>
    </message>
    <message>
        <source>the port refuses the flow control of the meter description</source>
        <translation>el puerto rechaza el control de flujo de la descripción del multímetro</translation>
    </message>
    <message>
        <source>the port refuses the parity of the meter description</source>
        <translation>el puerto rechaza la paridad de la descripción del multímetro</translation>
    </message>
    <message>
        <source>the port refuses the stop bits of the meter description</source>
        <translation>el puerto rechaza los bits de parada de la descripción del multímetro</translation>
    </message>
    <message>
        <source>the row has more fields than there are columns</source>
        <translation>la fila tiene más campos que columnas hay</translation>
    </message>
    <message>
        <source>the session has no meter description</source>
        <translation>la sesión no tiene descripción del multímetro</translation>
    </message>
    <message>
        <source>the sheet has fewer than two positions</source>
        <translation>la ficha tiene menos de dos posiciones</translation>
    </message>
    <message>
        <source>the time is missing</source>
        <translation>falta el tiempo</translation>
    </message>
    <message>
        <source>the time is negative</source>
        <translation>el tiempo es negativo</translation>
    </message>
    <message>
        <source>there is no such file or folder</source>
        <translation>no existe ese archivo ni esa carpeta</translation>
    </message>
    <message>
        <source>there is no such port</source>
        <translation>no existe ese puerto</translation>
    </message>
    <message>
        <source>they form no frame</source>
        <translation>no forman una trama</translation>
    </message>
    <message>
        <source>this is not a text file</source>
        <translation>no es un archivo de texto</translation>
    </message>
    <message>
        <source>time %1 is no time</source>
        <translation>el tiempo %1 no es un tiempo</translation>
    </message>
    <message>
        <source>times go back from %1 s to %2 s</source>
        <translation>los tiempos retroceden de %1 s a %2 s</translation>
    </message>
    <message>
        <source>too close to call</source>
        <translation>demasiado justo para decidir</translation>
    </message>
    <message>
        <source>too large for volts: %1</source>
        <translation>demasiado grande para voltios: %1</translation>
    </message>
    <message>
        <source>try another file or folder</source>
        <translation>pruebe con otro archivo u otra carpeta</translation>
    </message>
    <message>
        <source>two positions are named &quot;%1&quot;</source>
        <translation>dos posiciones se llaman «%1»</translation>
    </message>
    <message>
        <source>two positions have rest = true</source>
        <translation>dos posiciones tienen rest = true</translation>
    </message>
    <message>
        <source>unplug the adapter, plug it in again and retry</source>
        <translation>desenchufe el adaptador, enchúfelo otra vez y reintente</translation>
    </message>
    <message>
        <source>update the program or use a file of format %1</source>
        <translation>actualice el programa o use un archivo de formato %1</translation>
    </message>
    <message>
        <source>use another disk and keep this one for rescue</source>
        <translation>use otro disco y guarde este para rescatarlo</translation>
    </message>
    <message>
        <source>use another folder</source>
        <translation>use otra carpeta</translation>
    </message>
    <message>
        <source>use one of: %1</source>
        <translation>use una de estas: %1</translation>
    </message>
    <message>
        <source>volts %1 is no number</source>
        <translation>la tensión %1 no es un número</translation>
    </message>
    <message>
        <source>write &quot;0&quot; = -3</source>
        <translation>escriba &quot;0&quot; = -3</translation>
    </message>
    <message>
        <source>write [&quot;one&quot;, &quot;two&quot;]</source>
        <translation>escriba [&quot;one&quot;, &quot;two&quot;]</translation>
    </message>
    <message>
        <source>write [1.0, 2.0]</source>
        <translation>escriba [1.0, 2.0]</translation>
    </message>
    <message>
        <source>write a number such as 0.5, without quotes</source>
        <translation>escriba un número como 0.5, sin comillas</translation>
    </message>
    <message>
        <source>write a step&apos;s name, as in a mark</source>
        <translation>escriba el nombre de un paso, como en una marca</translation>
    </message>
    <message>
        <source>write a value from %1 to %2</source>
        <translation>escriba un valor de %1 a %2</translation>
    </message>
    <message>
        <source>write an ordinary number</source>
        <translation>escriba un número corriente</translation>
    </message>
    <message>
        <source>write each as [[%1]]</source>
        <translation>escriba cada una como [[%1]]</translation>
    </message>
    <message>
        <source>write each caution in quotes</source>
        <translation>escriba cada precaución entre comillas</translation>
    </message>
    <message>
        <source>write format = %1</source>
        <translation>escriba format = %1</translation>
    </message>
    <message>
        <source>write format = 1</source>
        <translation>escriba format = 1</translation>
    </message>
    <message>
        <source>write it as [%1]</source>
        <translation>escríbala como [%1]</translation>
    </message>
    <message>
        <source>write it as [sheet]</source>
        <translation>escríbala como [sheet]</translation>
    </message>
    <message>
        <source>write it in quotes, one line that is not empty</source>
        <translation>escríbalo entre comillas, en una línea que no esté vacía</translation>
    </message>
    <message>
        <source>write it in the RE2 syntax, in single quotes</source>
        <translation>escríbalo con la sintaxis RE2, entre comillas simples</translation>
    </message>
    <message>
        <source>write it on one line</source>
        <translation>escríbalo en una línea</translation>
    </message>
    <message>
        <source>write numbers from %1 to %2</source>
        <translation>escriba números de %1 a %2</translation>
    </message>
    <message>
        <source>write one from %1 to %2</source>
        <translation>escriba uno de %1 a %2</translation>
    </message>
    <message>
        <source>write text = [&quot;…&quot;]</source>
        <translation>escriba text = [&quot;…&quot;]</translation>
    </message>
    <message>
        <source>write the side of the connector that the probe is on</source>
        <translation>escriba en qué lado del conector está la punta</translation>
    </message>
    <message>
        <source>write true or false, without quotes</source>
        <translation>escriba true o false, sin comillas</translation>
    </message>
    <message>
        <source>write two numbers, the lower first</source>
        <translation>escriba dos números, primero el menor</translation>
    </message>
    <message>
        <source>write where the black lead is</source>
        <translation>escriba dónde está la punta negra</translation>
    </message>
    <message>
        <source>you may not open the port</source>
        <translation>usted no puede abrir el puerto</translation>
    </message>
    <message>
        <source>choose the meter&apos;s description first</source>
        <translation>elija antes la descripción del multímetro</translation>
    </message>
    <message>
        <source>choose the sensor&apos;s sheet first</source>
        <translation>elija antes la ficha del sensor</translation>
    </message>
    <message>
        <source>no meter is chosen</source>
        <translation>no hay multímetro elegido</translation>
    </message>
    <message>
        <source>no sensor sheet is chosen</source>
        <translation>no hay ficha de sensor elegida</translation>
    </message>
    <message>
        <source>the capture holds no sensor sheet</source>
        <translation>la captura no tiene ficha de sensor</translation>
    </message>
    <message>
        <source>Dropouts in a step that was undone do not count: %1.</source>
        <translation>Los cortes de un paso que se deshizo no cuentan: %1.</translation>
    </message>
    <message>
        <source>one more position</source>
        <translation>falta una posición</translation>
    </message>
    <message>
        <source>one more release</source>
        <translation>falta una suelta</translation>
    </message>
    <message>
        <source>one more second</source>
        <translation>falta un segundo</translation>
    </message>
    <message>
        <source>go on in another folder</source>
        <translation>siga en otra carpeta</translation>
    </message>
    <message>
        <source>save the capture in another folder</source>
        <translation>guarde la captura en otra carpeta</translation>
    </message>
    <message>
        <source>the file may not grow any further</source>
        <translation>el archivo no puede crecer más</translation>
    </message>
    <message>
        <source>the file or its folder is gone</source>
        <translation>el archivo o su carpeta ha desaparecido</translation>
    </message>
    <message>
        <source>%1: the disk has been busy for %2; the capture goes on in memory</source>
        <translation>%1: el disco lleva ocupado %2; la captura sigue en memoria</translation>
    </message>
    <message>
        <source>the capture is on the disk again</source>
        <translation>la captura está otra vez en el disco</translation>
    </message>
    <message>
        <source>Key off, then look along the ground wire, pin by pin, for a loose crimp.</source>
        <translation>Quite el contacto y busque un engaste flojo a lo largo del cable de masa, terminal a terminal.</translation>
    </message>
    <message>
        <source>Nothing was pressed fully and held.</source>
        <translation>No se llevó nada a fondo ni se mantuvo.</translation>
    </message>
    <message>
        <source>Press fully and hold it still, five seconds.</source>
        <translation>Lleve a fondo y mantenga quieto cinco segundos.</translation>
    </message>
    <message>
        <source>The ground wire moved once with nobody touching: %1 to %2 or further.</source>
        <translation>El cable de masa se movió una vez sin que nadie tocara: de %1 a %2 o más allá.</translation>
    </message>
    <message>
        <source>The ground wire moved with nobody touching: %1 went to %2 or further.</source>
        <translation>El cable de masa se movió sin que nadie tocara: %1 llegó a %2 o más allá.</translation>
    </message>
    <message>
        <source>Watch the ground wire for longer, then along its way pin by pin.</source>
        <translation>Vigile más tiempo el cable de masa, y luego a lo largo de su camino, terminal a terminal.</translation>
    </message>
    <message>
        <source>the other ends move half as far as %1 when the sensor is turned, until turns have taught it</source>
        <translation>los otros extremos se mueven la mitad que %1 al girar el sensor, hasta que los toques lo enseñen</translation>
    </message>
    <message>
        <source>An end lies near its limit, and no turn would bring every end further in.</source>
        <translation>Un extremo está cerca de su límite, y ningún giro metería más adentro todos los extremos.</translation>
    </message>
    <message>
        <source>Key off, unplug the connector at the sensor: clean it, check pin grip and seal, and wiggle it again.</source>
        <translation>Quite el contacto, desenchufe el conector del sensor: límpielo, revise el agarre de los terminales y la junta, y menéelo otra vez.</translation>
    </message>
    <message>
        <source>Lock the meter&apos;s range on DC volts and repeat these poses.</source>
        <translation>Fije el rango del multímetro en voltios de continua y repita estas posturas.</translation>
    </message>
    <message>
        <source>Look at the stops and the lever, then measure every end again.</source>
        <translation>Mire los topes y la palanca, y vuelva a medir cada extremo.</translation>
    </message>
    <message>
        <source>Measured at the sensor: a break between there and the controller would not show.</source>
        <translation>Medido en el sensor: un corte entre ahí y el controlador no se vería.</translation>
    </message>
    <message>
        <source>Steady, but %1 at %2 is too near a limit of %3 to %4: turn the sensor until it reads %5 higher.</source>
        <translation>Estable, pero %1, con %2, está demasiado cerca de un límite de %3 a %4: gire el sensor hasta que dé %5 más.</translation>
    </message>
    <message>
        <source>Steady, but %1 at %2 is too near a limit of %3 to %4: turn the sensor until it reads %5 lower.</source>
        <translation>Estable, pero %1, con %2, está demasiado cerca de un límite de %3 a %4: gire el sensor hasta que dé %5 menos.</translation>
    </message>
    <message>
        <source>Steady, but %1 is %2, outside %3 to %4: turn the sensor until it reads %5 higher.</source>
        <translation>Estable, pero %1 da %2, fuera de %3 a %4: gire el sensor hasta que dé %5 más.</translation>
    </message>
    <message>
        <source>Steady, but %1 is %2, outside %3 to %4: turn the sensor until it reads %5 lower.</source>
        <translation>Estable, pero %1 da %2, fuera de %3 a %4: gire el sensor hasta que dé %5 menos.</translation>
    </message>
    <message>
        <source>With the wiring mended, wiggle the shaft again.</source>
        <translation>Con el cableado arreglado, menee otra vez el eje.</translation>
    </message>
    <message>
        <source>section %1</source>
        <translation>tramo %1</translation>
    </message>
    <message>
        <source>%1 fits, likely: %2 readings from %3 bytes at %4, %5 bytes dropped.</source>
        <translation>%1 encaja, probablemente: %2 lecturas de %3 bytes a %4, %5 bytes desechados.</translation>
    </message>
    <message>
        <source>%1 fits, that is sure: %2 readings from %3 bytes at %4, %5 bytes dropped.</source>
        <translation>%1 encaja, con seguridad: %2 lecturas de %3 bytes a %4, %5 bytes desechados.</translation>
    </message>
    <message>
        <source>%1 is %2 and no turn of the sensor brings every end well into its window: linkage, stop, or a wrong part.</source>
        <translation>%1 da %2 y ningún giro del sensor mete todos los extremos bien dentro de su margen: varillaje, tope o pieza equivocada.</translation>
    </message>
    <message>
        <source>%1 is possible: %2 readings from %3 bytes at %4, %5 bytes dropped.</source>
        <translation>%1 es posible: %2 lecturas de %3 bytes a %4, %5 bytes desechados.</translation>
    </message>
    <message>
        <source>%1 of %2: asking on %3 at %4, %5</source>
        <translation>%1 de %2: preguntando en %3 a %4, %5</translation>
    </message>
    <message>
        <source>%1 of %2: listening on %3 at %4, %5</source>
        <translation>%1 de %2: escuchando en %3 a %4, %5</translation>
    </message>
    <message>
        <source>, parity = &quot;even&quot;</source>
        <translation>, parity = &quot;even&quot;</translation>
    </message>
    <message>
        <source>, parity = &quot;none&quot;</source>
        <translation>, parity = &quot;none&quot;</translation>
    </message>
    <message>
        <source>, parity = &quot;odd&quot;</source>
        <translation>, parity = &quot;odd&quot;</translation>
    </message>
    <message>
        <source>: the adapter went away; put it back and look again</source>
        <translation>: el adaptador desapareció; vuelva a ponerlo y busque otra vez</translation>
    </message>
    <message>
        <source>Every position is low by the same share, about %1 %%, while the reference holds: a meter in low-impedance mode loads the signal so, and so does a resistance in the signal wire.</source>
        <translation>Todas las posiciones están bajas en la misma proporción, cerca del %1 %%, mientras la referencia aguanta: así carga la señal un multímetro en modo de baja impedancia, y también una resistencia en el cable de señal.</translation>
    </message>
    <message>
        <source>Hold was on for %1: press the hold key.</source>
        <translation>La retención estuvo puesta %1: pulse la tecla de retención.</translation>
    </message>
    <message>
        <source>It does not show DC volts now: turn it to DC volts.</source>
        <translation>Ahora no muestra voltios CC: póngalo en voltios CC.</translation>
    </message>
    <message>
        <source>It says it is %1.</source>
        <translation>Dice que es %1.</translation>
    </message>
    <message>
        <source>It shows %1 now.</source>
        <translation>Ahora muestra %1.</translation>
    </message>
    <message>
        <source>Its link settings are others than described: copy the description and write %1.</source>
        <translation>Los ajustes de su enlace no son los descritos: copie la descripción y escriba %1.</translation>
    </message>
    <message>
        <source>Lock the range: it went blind for %1.</source>
        <translation>Bloquee el alcance: quedó ciego %1.</translation>
    </message>
    <message>
        <source>Lock the range: the meter changed it %1 times and was blind for %2 in all.</source>
        <translation>Bloquee el alcance: el multímetro lo cambió %1 veces y quedó ciego %2 en total.</translation>
    </message>
    <message>
        <source>Measure the reference at the controller at the same time: if it drops there too, the supply or another sensor on it; if it holds, the reference wire between.</source>
        <translation>Mida a la vez la referencia en el controlador: si también cae allí, es la alimentación u otro sensor conectado a ella; si aguanta, el cable de referencia entre ambos.</translation>
    </message>
    <message>
        <source>No description fits. At %1, %2, the bytes look like this: %3.</source>
        <translation>Ninguna descripción encaja. A %1, %2, los bytes parecen esto: %3.</translation>
    </message>
    <message>
        <source>Nothing came from the meter for %1: look at its cable, and switch its auto-off off.</source>
        <translation>No llegó nada del multímetro durante %1: mire su cable y desactive su apagado automático.</translation>
    </message>
    <message>
        <source>Nothing came. Switch the meter on, press its data-output key, and look at the lead.</source>
        <translation>No llegó nada. Encienda el multímetro, pulse su tecla de salida de datos y mire el cable.</translation>
    </message>
    <message>
        <source>Something comes every %1.</source>
        <translation>Llega algo cada %1.</translation>
    </message>
    <message>
        <source>The meter did not show plain DC volts for %1: turn it to DC volts, relative and low-impedance mode off.</source>
        <translation>El multímetro no mostró voltios CC normales durante %1: póngalo en voltios CC, sin modo relativo ni de baja impedancia.</translation>
    </message>
    <message>
        <source>The meter showed overload for %1: lock a range that holds 6 V, and check the leads.</source>
        <translation>El multímetro mostró sobrecarga durante %1: bloquee un alcance que llegue a 6 V y revise las puntas.</translation>
    </message>
    <message>
        <source>The number stood still for %1, more than its own noise allows: switch the meter off and on again.</source>
        <translation>El número estuvo quieto %1, más de lo que permite su propio ruido: apague y encienda el multímetro.</translation>
    </message>
    <message>
        <source>The reference went along with it.</source>
        <translation>La referencia se movió con él.</translation>
    </message>
    <message>
        <source>Turn the meter to plain DC volts, its low-impedance mode off, and measure every end again; if it stays low, measure on both sides of the signal pin.</source>
        <translation>Ponga el multímetro en voltios CC normales, sin modo de baja impedancia, y mida otra vez todos los extremos; si sigue bajo, mida a ambos lados del contacto de señal.</translation>
    </message>
    <message>
        <source>a second meter goes only beside a meter on a port</source>
        <translation>un segundo multímetro solo va junto a uno en un puerto</translation>
    </message>
    <message>
        <source>frames of 14 LCD-segment bytes</source>
        <translation>tramas de 14 bytes de segmentos de pantalla</translation>
    </message>
    <message>
        <source>leave it out here</source>
        <translation>quítelo aquí</translation>
    </message>
    <message>
        <source>lock the meter&apos;s range: it changed %1 times in a minute and was blind for %2 of it</source>
        <translation>bloquee el alcance del multímetro: cambió %1 veces en un minuto y estuvo ciego %2 de él</translation>
    </message>
    <message>
        <source>meters/README.md tells how to describe a new meter.</source>
        <translation>meters/README.md cuenta cómo describir un multímetro nuevo.</translation>
    </message>
    <message>
        <source>neither text nor frames that are known here</source>
        <translation>ni texto ni tramas conocidas aquí</translation>
    </message>
    <message>
        <source>no text, but packets of %1 bytes each</source>
        <translation>no es texto, sino paquetes de %1 bytes</translation>
    </message>
    <message>
        <source>nothing came</source>
        <translation>no llegó nada</translation>
    </message>
    <message>
        <source>relative mode is on, so the meter does not show volts: switch it off</source>
        <translation>el modo relativo está puesto, así que el multímetro no muestra voltios: quítelo</translation>
    </message>
    <message>
        <source>text lines of %1 characters, such as %2</source>
        <translation>líneas de texto de %1 caracteres, como %2</translation>
    </message>
    <message>
        <source>text lines, such as %1</source>
        <translation>líneas de texto, como %1</translation>
    </message>
    <message>
        <source>text, but no whole line yet</source>
        <translation>texto, pero aún ninguna línea entera</translation>
    </message>
    <message>
        <source>the meter on %1 has been silent for %2: it may have switched itself off; switch it on with its auto-off disabled, then look at the cable</source>
        <translation>el multímetro de %1 lleva callado %2: quizá se apagó solo; enciéndalo con el apagado automático desactivado y luego mire el cable</translation>
    </message>
    <message>
        <source>the meter on %1 refuses a command (%2): correct [link] in its description</source>
        <translation>el multímetro de %1 rechaza una orden (%2): corrija [link] en su descripción</translation>
    </message>
    <message>
        <source>the meter shows AC: turn it to DC volts</source>
        <translation>el multímetro muestra CA: póngalo en voltios CC</translation>
    </message>
    <message>
        <source>the meter&apos;s low-impedance mode pulls the signal down: turn it to plain DC volts</source>
        <translation>el modo de baja impedancia del multímetro baja la señal: póngalo en voltios CC normales</translation>
    </message>
    <message>
        <source>the number stands still, more than its own noise allows: switch the meter off and on again</source>
        <translation>el número está quieto, más de lo que permite su propio ruido: apague y encienda el multímetro</translation>
    </message>
    <message>
        <source>%1 releases</source>
        <translation>%1 sueltas</translation>
    </message>
    <message>
        <source>%1 stands at %2 coming from %3, and at %4 coming from %5, again and again: backlash or a worn bushing.</source>
        <translation>%1 está en %2 viniendo de %3, y en %4 viniendo de %5, una y otra vez: holgura o un casquillo gastado.</translation>
    </message>
    <message>
        <source>1 release</source>
        <translation>1 suelta</translation>
    </message>
    <message>
        <source>Before turning anything, measure the ground at the sensor&apos;s own pin, then the drop along the ground wire.</source>
        <translation>Antes de girar nada, mida la masa en la propia patilla del sensor y después la caída a lo largo del cable de masa.</translation>
    </message>
    <message>
        <source>Before turning anything, measure the reference at the sensor&apos;s own pin, then the signal on both sides of its pin.</source>
        <translation>Antes de girar nada, mida la referencia en la propia patilla del sensor y después la señal a ambos lados de su patilla.</translation>
    </message>
    <message>
        <source>Dropouts of unknown cause: %1. The capture does not say what was being moved.</source>
        <translation>Cortes de causa desconocida: %1. La captura no dice qué se estaba moviendo.</translation>
    </message>
    <message>
        <source>Dropouts with the harness (%1 of %2); with the shaft the meter left its range (poses: %3), where the level should have stood still: the connector first, the sensor second.</source>
        <translation>Cortes con el mazo (%1 de %2); con el eje el multímetro salió de su rango (posturas: %3), donde el nivel debía estar quieto: primero el conector, después el sensor.</translation>
    </message>
    <message>
        <source>Dropouts with the shaft (%1 of %2) and with the harness (%3 of %4): the connector first, the sensor second.</source>
        <translation>Cortes con el eje (%1 de %2) y con el mazo (%3 de %4): primero el conector, después el sensor.</translation>
    </message>
    <message>
        <source>Dropouts with the shaft (%1 of %2); with the harness the meter left its range (poses: %3), where the level should have stood still: the connector first, the sensor second.</source>
        <translation>Cortes con el eje (%1 de %2); con el mazo el multímetro salió de su rango (posturas: %3), donde el nivel debía estar quieto: primero el conector, después el sensor.</translation>
    </message>
    <message>
        <source>Every position is low by the same share, about %1 %%, as a resistance in the reference feed or in the signal wire would leave them, beyond the places where they were measured.</source>
        <translation>Todas las posiciones están bajas en la misma proporción, un %1 %%, como las dejaría una resistencia en la alimentación de referencia o en el cable de señal, más allá de donde se midieron.</translation>
    </message>
    <message>
        <source>First cold, and turned since: now it would be about %1.</source>
        <translation>La primera en frío, y girado desde entonces: ahora sería de unos %1.</translation>
    </message>
    <message>
        <source>Inside its windows at every end; of dropouts of %1 or longer, none in %2.</source>
        <translation>Dentro de su margen en cada extremo; de cortes de %1 o más largos, ninguno en %2.</translation>
    </message>
    <message>
        <source>Look for lost motion in the joints of the linkage and in the bushing, by hand, the shaft held.</source>
        <translation>Busque holgura a mano en las articulaciones del varillaje y en el casquillo, con el eje sujeto.</translation>
    </message>
    <message>
        <source>Released, it came back to %1 in %2 of %3, and to %4 in the others: not repeatable.</source>
        <translation>Al soltar volvió a %1 en %2 de %3, y a %4 en las demás: no repite.</translation>
    </message>
    <message>
        <source>Released, it hung at %1 in %2 of %3 with the arm off its stop: spring and linkage first.</source>
        <translation>Al soltar se quedó en %1 en %2 de %3, con el brazo fuera de su tope: primero el muelle y el varillaje.</translation>
    </message>
    <message>
        <source>Released, it never came back: it stood at about %1 after %2, and at %3 before the first press.</source>
        <translation>Al soltar no volvió nunca: quedó en unos %1 después de %2, y en %3 antes de pisar por primera vez.</translation>
    </message>
    <message>
        <source>Releases recorded: %1 of 3.</source>
        <translation>Sueltas grabadas: %1 de 3.</translation>
    </message>
    <message>
        <source>The ground wire moves under the same wiggle: %1 went to %2 or further in %3 of %4.</source>
        <translation>El cable de masa se mueve con el mismo meneo: %1 llegó a %2 o más allá en %3 de %4.</translation>
    </message>
    <message>
        <source>The low end is up and the high end nearly as it should be, as about %1 on the ground side of the track would leave them: a resistance beyond the place where the ground was measured.</source>
        <translation>El extremo bajo está subido y el alto casi como debe, como los dejarían unos %1 en el lado de masa de la pista: una resistencia más allá de donde se midió la masa.</translation>
    </message>
    <message>
        <source>The meter changed its range in %1 of the harness, where the level should have stood still.</source>
        <translation>El multímetro cambió de rango en %1 del mazo, donde el nivel debía estar quieto.</translation>
    </message>
    <message>
        <source>The meter changed its range in %1 of the shaft, where the level should have stood still.</source>
        <translation>El multímetro cambió de rango en %1 del eje, donde el nivel debía estar quieto.</translation>
    </message>
    <message>
        <source>The meter was blind in %1 of the harness.</source>
        <translation>El multímetro estuvo ciego en %1 del mazo.</translation>
    </message>
    <message>
        <source>The meter was blind in %1 of the shaft.</source>
        <translation>El multímetro estuvo ciego en %1 del eje.</translation>
    </message>
    <message>
        <source>The reference went from %1 to %2 or further, %3.</source>
        <translation>La referencia pasó de %1 a %2 o más allá, %3.</translation>
    </message>
    <message>
        <source>The reference went from %1 to %2 or further, and the signal went with it in the same proportion, %3: it is what feeds the sensor.</source>
        <translation>La referencia pasó de %1 a %2 o más allá, y la señal la siguió en la misma proporción, %3: es lo que alimenta al sensor.</translation>
    </message>
    <message>
        <source>The reference wire drops out under the same wiggle: %1 went to %2 or further in %3 of %4.</source>
        <translation>El cable de referencia se corta con el mismo meneo: %1 llegó a %2 o más allá en %3 de %4.</translation>
    </message>
    <message>
        <source>The signal dropped out in %1 of %2 of the harness: %3 went to %4 or further.</source>
        <translation>La señal dio corte en %1 de %2 del mazo: %3 llegó a %4 o más allá.</translation>
    </message>
    <message>
        <source>The signal dropped out in %1 of %2 of the harness: %3 went to %4 or further; in %5 of the shaft it did not.</source>
        <translation>La señal dio corte en %1 de %2 del mazo: %3 llegó a %4 o más allá; en %5 del eje no lo hizo.</translation>
    </message>
    <message>
        <source>Wiggle the harness, poses still wanted: %1.</source>
        <translation>Menee el mazo; posturas que faltan: %1.</translation>
    </message>
    <message>
        <source>Wiggle the shaft, poses still wanted: %1.</source>
        <translation>Menee el eje; posturas que faltan: %1.</translation>
    </message>
    <message>
        <source>With 95 %% confidence at most %1 of poses have one.</source>
        <translation>Con un 95 %% de confianza, como mucho el %1 de las posturas tiene uno.</translation>
    </message>
    <message>
        <source>With the harness it dropped out too, less often: in %1 of %2.</source>
        <translation>Con el mazo también dio corte, menos veces: en %1 de %2.</translation>
    </message>
    <message>
        <source>With the shaft it dropped out in %1 of %2: the sensor itself, if the wiring proves sound.</source>
        <translation>Con el eje dio corte en %1 de %2: el propio sensor, si el cableado resulta estar bien.</translation>
    </message>
    <message>
        <source>section %1, %2</source>
        <translation>tramo %1, %2</translation>
    </message>
    <message>
        <source>once</source>
        <translation>una vez</translation>
    </message>
    <message>
        <source>Hold the connector still and repeat the wiggle.</source>
        <translation>Sujete el conector quieto y repita el meneo.</translation>
    </message>
    <message>
        <source>What else it can be</source>
        <translation>Qué más puede ser</translation>
    </message>
    <message>
        <source>The reference changed by %1 between looks: watch it for longer, then measure %2 again.</source>
        <translation>La referencia cambió en %1 entre dos miradas: obsérvela más tiempo y vuelva a medir %2.</translation>
    </message>
    <message>
        <source>The level moved by itself in %1 of %2 of the harness: from %3 to %4, and stayed there.</source>
        <translation>El nivel se movió solo en %1 de %2 del mazo: de %3 a %4, y ahí se quedó.</translation>
    </message>
    <message>
        <source>Wanted, but no turn does it: the best, by %1 at rest, would leave %2 at %3, outside %4 to %5.</source>
        <translation>Haría falta, pero ningún giro lo logra: el mejor, de %1 en reposo, dejaría %2 en %3, fuera de %4 a %5.</translation>
    </message>
    <message>
        <source>Wanted, but no turn does it: the best, by %1 at rest, would leave %2 at %3, too near a limit of %4 to %5.</source>
        <translation>Haría falta, pero ningún giro lo logra: el mejor, de %1 en reposo, dejaría %2 en %3, demasiado cerca de un límite de %4 a %5.</translation>
    </message>
    <message>
        <source>Wanted, but not every position was measured.</source>
        <translation>Haría falta, pero no se midieron todas las posiciones.</translation>
    </message>
    <message>
        <source>Wanted, but this mount has no adjustment.</source>
        <translation>Haría falta, pero esta fijación no tiene ajuste.</translation>
    </message>
    <message>
        <source>A breakout lead is best; else back-probe where the wire enters the connector, if the maker allows it; piercing a wire comes last.</source>
        <translation>Mejor un cable de derivación; si no, pinche por detrás, donde el cable entra en el conector, si el fabricante lo permite; perforar un cable es lo último.</translation>
    </message>
    <message>
        <source>A connector that is touched can hide its fault, and a sensor that is unplugged is neither fed nor loaded.</source>
        <translation>Un conector que se toca puede esconder su fallo, y un sensor desenchufado no está ni alimentado ni cargado.</translation>
    </message>
    <message>
        <source>Read and note the codes before touching a connector; lock the meter&apos;s range on DC volts; clip the black lead to battery negative; put the red lead on the reference wire, on the harness side of the connector, which stays plugged in; turn the key on.</source>
        <translation>Lea y anote los códigos antes de tocar un conector; fije el rango del multímetro en voltios de continua; ponga la punta negra en el negativo de batería; ponga la roja en el cable de referencia, por el lado del mazo del conector, que sigue enchufado; dé el contacto.</translation>
    </message>
    <message>
        <source>open it again</source>
        <translation>ábralo otra vez</translation>
    </message>
    <message>
        <source>reading it was given up</source>
        <translation>se abandonó su lectura</translation>
    </message>
    <message>
        <source>The meter on the reference was blind %1, for %2 in all.</source>
        <translation>El multímetro de la referencia estuvo ciego %1, %2 en total.</translation>
    </message>
    <message>
        <source>both meters are on the same port</source>
        <translation>los dos multímetros están en el mismo puerto</translation>
    </message>
    <message>
        <source>choose another port for the one on the reference</source>
        <translation>elija otro puerto para el de la referencia</translation>
    </message>
    <message>
        <source>%1; on the reference: %2</source>
        <translation>%1; en la referencia: %2</translation>
    </message>
    <message>
        <source>on the reference: %1</source>
        <translation>en la referencia: %1</translation>
    </message>
    <message>
        <source>The meter&apos;s gain error cancels: it measured the reference too.</source>
        <translation>El error de ganancia del multímetro se anula: también midió la referencia.</translation>
    </message>
    <message>
        <source>Watch the ground</source>
        <translation>Vigilar la masa</translation>
    </message>
    <message>
        <source>Watch the reference</source>
        <translation>Vigilar la referencia</translation>
    </message>
    <message>
        <source>%1 more minutes</source>
        <translation>faltan %1 minutos</translation>
    </message>
    <message>
        <source>one more minute</source>
        <translation>falta un minuto</translation>
    </message>
    <message>
        <source>Electric, hybrid or pressurised, it can move, engine off: stay clear.</source>
        <translation>Eléctrica, híbrida o con presión, se mueve con el motor parado: apártese.</translation>
    </message>
    <message>
        <source>Fingers off the tip, leads off the arm.</source>
        <translation>Dedos lejos de la punta; cables lejos del brazo.</translation>
    </message>
    <message>
        <source>Nobody starts the engine; one person keeps the key.</source>
        <translation>Nadie arranca el motor; una sola persona guarda la llave.</translation>
    </message>
    <message>
        <source>The maker&apos;s literature and local rules come first.</source>
        <translation>Primero el manual del fabricante y las normas locales.</translation>
    </message>
    <message>
        <source>While the key is on, unplug nothing.</source>
        <translation>Con el contacto dado, no desenchufe nada.</translation>
    </message>
    <message>
        <source>times are whole seconds: readings spread evenly within each</source>
        <translation>los tiempos son segundos enteros: lecturas repartidas por igual dentro de cada uno</translation>
    </message>
    <message>
        <source>At %1 it went from %2 to %3: %4. It speaks for no fault.</source>
        <translation>A los %1 pasó de %2 a %3: %4. No indica ninguna avería.</translation>
    </message>
    <message>
        <source>Seen once on the move, %1 to %2 or further, and not again at %3 more stops.</source>
        <translation>Visto una vez en movimiento, de %1 a %2 o más, y no de nuevo en otras %3 paradas.</translation>
    </message>
    <message>
        <source>Seen once with the harness moved, %1 to %2 or further, and not again in %3 more poses.</source>
        <translation>Visto una vez al mover el mazo, de %1 a %2 o más, y no de nuevo en otras %3 posturas.</translation>
    </message>
    <message>
        <source>Seen once with the shaft pushed, %1 to %2 or further, and not again in %3 more poses.</source>
        <translation>Visto una vez al empujar el eje, de %1 a %2 o más, y no de nuevo en otras %3 posturas.</translation>
    </message>
    <message>
        <source>most likely a foot left on it</source>
        <translation>lo más probable, un pie que quedó encima</translation>
    </message>
    <message>
        <source>most likely a slip</source>
        <translation>lo más probable, un resbalón</translation>
    </message>
    <message>
        <source>most likely a tap</source>
        <translation>lo más probable, un toque</translation>
    </message>
    <message>
        <source>most likely moved before it was asked</source>
        <translation>lo más probable, movido antes de pedirlo</translation>
    </message>
    <message>
        <source>most likely moved late</source>
        <translation>lo más probable, movido tarde</translation>
    </message>
    <message>
        <source>most likely not pressed all the way</source>
        <translation>lo más probable, no pisado a fondo</translation>
    </message>
    <message>
        <source>most likely the arm leaned with the push</source>
        <translation>lo más probable, el brazo cedió con el empuje</translation>
    </message>
    <message>
        <source>most likely the battery sagged</source>
        <translation>lo más probable, la batería decayó</translation>
    </message>
    <message>
        <source>most likely the engine was cranked</source>
        <translation>lo más probable, se accionó el arranque</translation>
    </message>
    <message>
        <source>most likely the hand or foot crept</source>
        <translation>lo más probable, la mano o el pie se fue moviendo</translation>
    </message>
    <message>
        <source>most likely the tip lost contact</source>
        <translation>lo más probable, la punta perdió contacto</translation>
    </message>
    <message>
        <source>why is not known</source>
        <translation>no se sabe por qué</translation>
    </message>
    <message>
        <source>Released, it hung at %1 in %2 of %3, and nobody looked whether the arm was on its stop: spring and linkage first.</source>
        <translation>Al soltar, se quedó en %1 en %2 de %3, y nadie miró si el brazo estaba en su tope: primero el muelle y el varillaje.</translation>
    </message>
    <message>
        <source>A lead that loses contact looks like a bad sensor, and is clipped again in a minute.</source>
        <translation>Una punta que pierde contacto parece un sensor malo, y se vuelve a poner en un minuto.</translation>
    </message>
    <message>
        <source>Check the leads</source>
        <translation>Compruebe las puntas</translation>
    </message>
    <message>
        <source>Clip the lead again, best in another place of the same wire, repeat the lead check, then wiggle again: what was seen before does not count.</source>
        <translation>Ponga otra vez la punta, mejor en otro sitio del mismo cable, repita la prueba de las puntas y menee de nuevo: lo visto antes no cuenta.</translation>
    </message>
    <message>
        <source>Clip the lead to the same wire in another place and measure again.</source>
        <translation>Ponga la punta en otro sitio del mismo cable y mida otra vez.</translation>
    </message>
    <message>
        <source>Hold the connector</source>
        <translation>Sujete el conector</translation>
    </message>
    <message>
        <source>Hold the connector still and wiggle the shaft on, poses still wanted: %1.</source>
        <translation>Sujete quieto el conector y siga meneando el eje; posturas que faltan: %1.</translation>
    </message>
    <message>
        <source>If it no longer drops out, it is the connector and not the sensor.</source>
        <translation>Si ya no hay cortes, es el conector y no el sensor.</translation>
    </message>
    <message>
        <source>Move the red lead to the wire it is to read, and measure again.</source>
        <translation>Pase la punta roja al cable que debe leer y mida otra vez.</translation>
    </message>
    <message>
        <source>Push nothing but the leads at clip and tip, as the pace says: first the red one, then the black one.</source>
        <translation>Empuje solo las puntas, en la pinza y en el extremo, al ritmo indicado: primero la roja, después la negra.</translation>
    </message>
    <message>
        <source>Replace the sensor, %1.</source>
        <translation>Cambie el sensor, %1.</translation>
    </message>
    <message>
        <source>Section 1 is the sensor&apos;s connector, section %1 the controller&apos;s; between them lie pieces of the wire.</source>
        <translation>El tramo 1 es el conector del sensor, el tramo %1 el del controlador; entre ellos están los trozos de cable.</translation>
    </message>
    <message>
        <source>The ground wire reads %1, as the signal does: the lead is still on the signal.</source>
        <translation>El cable de masa marca %1, lo mismo que la señal: la punta sigue en la señal.</translation>
    </message>
    <message>
        <source>The ground wire reads %1: a lead on the wrong wire reads so. The lead first.</source>
        <translation>El cable de masa marca %1: así marca una punta en el cable equivocado. Primero la punta.</translation>
    </message>
    <message>
        <source>The lead check was not done.</source>
        <translation>No se hizo la prueba de las puntas.</translation>
    </message>
    <message>
        <source>The reference reads %1, as the signal does: the lead is still on the signal.</source>
        <translation>La referencia marca %1, lo mismo que la señal: la punta sigue en la señal.</translation>
    </message>
    <message>
        <source>The reference reads %1: a tip that does not touch reads so. The lead first.</source>
        <translation>La referencia marca %1: así marca una punta que no toca. Primero la punta.</translation>
    </message>
    <message>
        <source>The signal dropped out in %1 of %2 of the shaft, %3 to %4 or further: the shaft is suspect, and its connector and the harness will tell.</source>
        <translation>La señal se cortó en %1 de %2 del eje, de %3 a %4 o más allá: el eje es sospechoso, y su conector y el mazo lo dirán.</translation>
    </message>
    <message>
        <source>The signal dropped out in %1 of %2 of the shaft: %3 went to %4 or further; with the connector held it did not, in %5: the connector at the sensor.</source>
        <translation>La señal se cortó en %1 de %2 del eje: %3 llegó a %4 o más allá; con el conector sujeto no, en %5: el conector del sensor.</translation>
    </message>
    <message>
        <source>The signal stays near 0 V wherever the pedal is: a tip that does not touch reads so. The lead first.</source>
        <translation>La señal se queda cerca de 0 V esté donde esté el pedal: así marca una punta que no toca. Primero la punta.</translation>
    </message>
    <message>
        <source>The signal stays near the reference wherever the pedal is: a lead on the wrong wire reads so. The lead first.</source>
        <translation>La señal se queda cerca de la referencia esté donde esté el pedal: así marca una punta en el cable equivocado. Primero la punta.</translation>
    </message>
    <message>
        <source>Watch the reference and the ground wire under the same wiggle.</source>
        <translation>Vigile los cables de referencia y de masa con el mismo meneo.</translation>
    </message>
    <message>
        <source>Wiggle the harness at %1, poses still wanted there: %2.</source>
        <translation>Menee el mazo en %1; posturas que faltan allí: %2.</translation>
    </message>
    <message>
        <source>With nothing but the leads moved, the signal went from %1 to %2 or further, in %3 of %4: the lead, or the pin it touches.</source>
        <translation>Moviendo solo las puntas, la señal pasó de %1 a %2 o más allá, en %3 de %4: la punta, o el contacto que toca.</translation>
    </message>
    <message>
        <source>With one hand hold the sensor&apos;s connector still; with the other push the shaft sideways and hold, as the pace says.</source>
        <translation>Con una mano sujete quieto el conector del sensor; con la otra empuje el eje de lado y manténgalo, al ritmo indicado.</translation>
    </message>
    <message>
        <source>black lead</source>
        <translation>punta negra</translation>
    </message>
    <message>
        <source>if it drops out with the connector held</source>
        <translation>si se corta con el conector sujeto</translation>
    </message>
    <message>
        <source>if it drops out with the connector held, and the lead is ruled out</source>
        <translation>si se corta con el conector sujeto y la punta queda descartada</translation>
    </message>
    <message>
        <source>if lever and mount are tight</source>
        <translation>si palanca y soporte están firmes</translation>
    </message>
    <message>
        <source>if the lead is ruled out</source>
        <translation>si la punta queda descartada</translation>
    </message>
    <message>
        <source>red lead</source>
        <translation>punta roja</translation>
    </message>
    <message>
        <source>sections is not a list of names</source>
        <translation>sections no es una lista de nombres</translation>
    </message>
    <message>
        <source>write the names of the harness&apos;s sections, from the sensor</source>
        <translation>escriba los nombres de los tramos del mazo, desde el sensor</translation>
    </message>
    <message>
        <source>%1 was visited once; one visit is none.</source>
        <translation>%1 se visitó una vez; una visita no cuenta.</translation>
    </message>
    <message>
        <source>Dropouts while the shaft turns: %1 went to %2 or further.</source>
        <translation>Cortes mientras el eje gira: %1 llegó a %2 o más allá.</translation>
    </message>
    <message>
        <source>It went over %1: a wire touches a battery feed. Stop, key off.</source>
        <translation>Pasó de %1: un cable toca la alimentación de la batería. Pare, quite el contacto.</translation>
    </message>
    <message>
        <source>It went over %1: stop, key off.</source>
        <translation>Pasó de %1: pare, quite el contacto.</translation>
    </message>
    <message>
        <source>Press fully to %1 again and hold it still.</source>
        <translation>Pise a fondo hasta %1 otra vez y manténgalo quieto.</translation>
    </message>
    <message>
        <source>The level moved by itself from %1 to %2 with the shaft held.</source>
        <translation>El nivel se movió solo de %1 a %2 con el eje sujeto.</translation>
    </message>
    <message>
        <source>The level moved by itself in %1 of %2 of the shaft: from %3 to %4, and stayed there.</source>
        <translation>El nivel se movió solo en %1 de %2 del eje: de %3 a %4, y allí se quedó.</translation>
    </message>
    <message>
        <source>The signal dropped out in %1 of %2 of the shaft, and came back: %3 went to %4 or further.</source>
        <translation>La señal se cortó en %1 de %2 del eje, y volvió: %3 llegó a %4 o más allá.</translation>
    </message>
    <message>
        <source>No step left would change the verdict: finish here?</source>
        <translation>Ningún paso que queda cambiaría el veredicto: ¿terminar aquí?</translation>
    </message>
    <message>
        <source>No step left would change this.</source>
        <translation>Ningún paso que queda cambiaría esto.</translation>
    </message>
    <message>
        <source>Feet and hands off, and watch it at rest again.</source>
        <translation>Pies y manos fuera, y mírelo otra vez en reposo.</translation>
    </message>
    <message>
        <source>Harness: %1 bends counted, %2 lost, %3 to go.</source>
        <translation>Mazo: %1 dobleces contados, %2 perdidos, faltan %3.</translation>
    </message>
    <message>
        <source>Harness: %1 bends counted, %2 to go.</source>
        <translation>Mazo: %1 dobleces contados, faltan %2.</translation>
    </message>
    <message>
        <source>It reads %1, which no reference does: is the tip on the reference wire?</source>
        <translation>Marca %1, cosa que no hace ninguna referencia: ¿está la punta en el cable de referencia?</translation>
    </message>
    <message>
        <source>It reads %1: red and black are swapped, at the meter or at the wires.</source>
        <translation>Marca %1: la roja y la negra están cambiadas, en el multímetro o en los cables.</translation>
    </message>
    <message>
        <source>It reads %1: the key is off, or the tip does not touch. The lead first: clip it again, in another place.</source>
        <translation>Marca %1: el contacto está quitado o la punta no toca. Primero la punta: póngala otra vez, en otro sitio.</translation>
    </message>
    <message>
        <source>Key off, then feel for play at the pivot, its bushing and the sensor&apos;s mount.</source>
        <translation>Quite el contacto y busque holgura en el eje de giro, su casquillo y el soporte del sensor.</translation>
    </message>
    <message>
        <source>No two visits of %1 agree.</source>
        <translation>No hay dos visitas a %1 que coincidan.</translation>
    </message>
    <message>
        <source>Push the sensor&apos;s shaft and hold, each way as the pace says; touch no wire.</source>
        <translation>Empuje el eje del sensor y manténgalo, a cada lado al ritmo indicado; no toque ningún cable.</translation>
    </message>
    <message>
        <source>Release to %1 again and let it settle.</source>
        <translation>Suelte otra vez a %1 y deje que se asiente.</translation>
    </message>
    <message>
        <source>Shaft: %1 pushes counted, %2 lost, %3 to go.</source>
        <translation>Eje: %1 empujes contados, %2 perdidos, faltan %3.</translation>
    </message>
    <message>
        <source>Shaft: %1 pushes counted, %2 to go.</source>
        <translation>Eje: %1 empujes contados, faltan %2.</translation>
    </message>
    <message>
        <source>So many would show a fault of one push in %1 with a chance of %2 %%.</source>
        <translation>Tantos mostrarían un fallo de un empuje de cada %1 con una probabilidad del %2 %%.</translation>
    </message>
    <message>
        <source>The arm leaned with the push, %1 to %2; it was not pushed with the arm held.</source>
        <translation>El brazo se ladeó con el empuje, de %1 a %2; no se empujó con el brazo sujeto.</translation>
    </message>
    <message>
        <source>The arm leaned with the push: hold the arm still with the other hand, and push the shaft again, as the pace says.</source>
        <translation>El brazo se ladeó con el empuje: sujete quieto el brazo con la otra mano y empuje el eje otra vez, al ritmo indicado.</translation>
    </message>
    <message>
        <source>Where it was bent least, a fault of one bend in %1 would show with a chance of %2 %%.</source>
        <translation>Donde menos se dobló, un fallo de un doblez de cada %1 se mostraría con una probabilidad del %2 %%.</translation>
    </message>
    <message>
        <source>With the push the arm leans, %1 to %2, and it does so with the arm held: the bushing or the mount is loose.</source>
        <translation>Con el empuje el brazo se ladea, de %1 a %2, y lo hace también sujeto: el casquillo o el soporte tienen holgura.</translation>
    </message>
    <message>
        <source>pull it out</source>
        <translation>tire hacia fuera</translation>
    </message>
    <message>
        <source>push it in</source>
        <translation>empuje hacia dentro</translation>
    </message>
    <message>
        <source>tap the body</source>
        <translation>golpee el cuerpo</translation>
    </message>
    <message>
        <source>Cells in which the meter showed no number: %1.</source>
        <translation>Celdas en las que el multímetro no mostró ningún número: %1.</translation>
    </message>
    <message>
        <source>Dropouts outside the steps, which no step counts</source>
        <translation>Cortes fuera de los pasos, que ningún paso cuenta</translation>
    </message>
    <message>
        <source>In its dates the day comes first.</source>
        <translation>En sus fechas el día va primero.</translation>
    </message>
    <message>
        <source>In its dates the month comes first.</source>
        <translation>En sus fechas el mes va primero.</translation>
    </message>
    <message>
        <source>In its dates the year comes first.</source>
        <translation>En sus fechas el año va primero.</translation>
    </message>
    <message>
        <source>Its columns are named on line %1 and lie between %2.</source>
        <translation>Sus columnas tienen los nombres en la línea %1 y van separadas por %2.</translation>
    </message>
    <message>
        <source>Its columns have no names and lie between %1.</source>
        <translation>Sus columnas no tienen nombres y van separadas por %1.</translation>
    </message>
    <message>
        <source>Its numbers have a decimal comma.</source>
        <translation>Sus números llevan coma decimal.</translation>
    </message>
    <message>
        <source>Its numbers have a decimal point.</source>
        <translation>Sus números llevan punto decimal.</translation>
    </message>
    <message>
        <source>No level of it lies in a window of this sheet. They would fit: %1.</source>
        <translation>Ninguno de sus niveles cae en una ventana de esta hoja. Encajarían: %1.</translation>
    </message>
    <message>
        <source>Poses are counted beside them: one that lasts on counts in each pose it is in, several in one pose count once, and one that the reference shares or that lies outside the poses counts in none.</source>
        <translation>Las posturas se cuentan aparte: un corte que perdura cuenta en cada postura en la que está, varios en una postura cuentan una vez, y uno que comparte la referencia o que cae fuera de las posturas no cuenta en ninguna.</translation>
    </message>
    <message>
        <source>Reference: column %1.</source>
        <translation>Referencia: columna %1.</translation>
    </message>
    <message>
        <source>Signal: column %1, taken as %2.</source>
        <translation>Señal: columna %1, tomada como %2.</translation>
    </message>
    <message>
        <source>Time: column %1, taken as %2.</source>
        <translation>Tiempo: columna %1, tomada como %2.</translation>
    </message>
    <message>
        <source>Time: columns %1 and %2, taken as %3.</source>
        <translation>Tiempo: columnas %1 y %2, tomadas como %3.</translation>
    </message>
    <message>
        <source>a clock</source>
        <translation>un reloj</translation>
    </message>
    <message>
        <source>a meter averages over a part of its interval at most: correct one of them</source>
        <translation>un multímetro promedia como mucho sobre una parte de su intervalo: corrija uno de los dos</translation>
    </message>
    <message>
        <source>a time of day in six figures</source>
        <translation>una hora del día en seis cifras</translation>
    </message>
    <message>
        <source>another program has cut the file short</source>
        <translation>otro programa ha acortado el archivo</translation>
    </message>
    <message>
        <source>aperture_s %1 is longer than interval_s %2</source>
        <translation>aperture_s %1 es más largo que interval_s %2</translation>
    </message>
    <message>
        <source>bars</source>
        <translation>barras</translation>
    </message>
    <message>
        <source>below an empty line there are numbers again: readings, or a summary of them?</source>
        <translation>debajo de una línea vacía vuelve a haber números: ¿lecturas o un resumen de ellas?</translation>
    </message>
    <message>
        <source>check the names against the line of columns, or give the columns by number</source>
        <translation>compare los nombres con la línea de las columnas, o indique las columnas por su número</translation>
    </message>
    <message>
        <source>commas</source>
        <translation>comas</translation>
    </message>
    <message>
        <source>date and time in figures</source>
        <translation>fecha y hora en cifras</translation>
    </message>
    <message>
        <source>days, as spreadsheets count them</source>
        <translation>días, como los cuentan las hojas de cálculo</translation>
    </message>
    <message>
        <source>from line %1 on there are no readings; that is left out</source>
        <translation>desde la línea %1 no hay lecturas; eso se omite</translation>
    </message>
    <message>
        <source>give it with --time-column, by its name or its number from 1, or the seconds between the rows with --interval</source>
        <translation>indíquela con --time-column, por su nombre o su número desde 1, o los segundos entre las filas con --interval</translation>
    </message>
    <message>
        <source>give it with --volts-column, by its name or its number from 1</source>
        <translation>indíquela con --volts-column, por su nombre o su número desde 1</translation>
    </message>
    <message>
        <source>give the column of the times with --time-column, or the seconds between the readings with --interval</source>
        <translation>indique la columna de los tiempos con --time-column, o los segundos entre las lecturas con --interval</translation>
    </message>
    <message>
        <source>give them with --time-column and --volts-column, by their names or their numbers from 1</source>
        <translation>indíquelas con --time-column y --volts-column, por sus nombres o sus números desde 1</translation>
    </message>
    <message>
        <source>hours</source>
        <translation>horas</translation>
    </message>
    <message>
        <source>hours and minutes</source>
        <translation>horas y minutos</translation>
    </message>
    <message>
        <source>microseconds</source>
        <translation>microsegundos</translation>
    </message>
    <message>
        <source>milliseconds</source>
        <translation>milisegundos</translation>
    </message>
    <message>
        <source>minutes</source>
        <translation>minutos</translation>
    </message>
    <message>
        <source>minutes and seconds</source>
        <translation>minutos y segundos</translation>
    </message>
    <message>
        <source>no time and volts columns found in %1</source>
        <translation>no se encuentran columnas de tiempo y de voltios en %1</translation>
    </message>
    <message>
        <source>no time column is found in %1</source>
        <translation>no se encuentra una columna de tiempo en %1</translation>
    </message>
    <message>
        <source>no volts column is found in %1</source>
        <translation>no se encuentra una columna de voltios en %1</translation>
    </message>
    <message>
        <source>put decimal commas in quotes or use another delimiter; what is below the readings --last-line leaves out</source>
        <translation>ponga entre comillas las comas decimales o use otro separador; lo que hay debajo de las lecturas lo omite --last-line</translation>
    </message>
    <message>
        <source>save them with seconds, or give the seconds between the readings with --interval</source>
        <translation>guárdelos con segundos, o indique los segundos entre las lecturas con --interval</translation>
    </message>
    <message>
        <source>say what it is with --volts-unit mV or --volts-unit V</source>
        <translation>diga qué es con --volts-unit mV o --volts-unit V</translation>
    </message>
    <message>
        <source>say what they are with --time-as, one of: %1</source>
        <translation>diga qué son con --time-as, uno de: %1</translation>
    </message>
    <message>
        <source>say which with --date-order ymd, dmy or mdy</source>
        <translation>diga cuál con --date-order ymd, dmy o mdy</translation>
    </message>
    <message>
        <source>say which with --decimal-comma or --decimal-point</source>
        <translation>diga cuál con --decimal-comma o --decimal-point</translation>
    </message>
    <message>
        <source>say which with --last-line %1, or --last-line 0 for a reading</source>
        <translation>dígalo con --last-line %1, o con --last-line 0 si es una lectura</translation>
    </message>
    <message>
        <source>say which with --last-line %1, or --last-line 0 for readings</source>
        <translation>dígalo con --last-line %1, o con --last-line 0 si son lecturas</translation>
    </message>
    <message>
        <source>say which with --time-as h:m or --time-as m:s</source>
        <translation>diga cuál con --time-as h:m o --time-as m:s</translation>
    </message>
    <message>
        <source>say which with --time-as s or --time-as hhmmss</source>
        <translation>diga cuál con --time-as s o --time-as hhmmss</translation>
    </message>
    <message>
        <source>seconds</source>
        <translation>segundos</translation>
    </message>
    <message>
        <source>semicolons</source>
        <translation>puntos y comas</translation>
    </message>
    <message>
        <source>spaces</source>
        <translation>espacios</translation>
    </message>
    <message>
        <source>tabs</source>
        <translation>tabuladores</translation>
    </message>
    <message>
        <source>the columns that were named are not there in %1</source>
        <translation>las columnas indicadas no están en %1</translation>
    </message>
    <message>
        <source>the date in %1 can be read in more than one order</source>
        <translation>la fecha en %1 puede leerse en más de un orden</translation>
    </message>
    <message>
        <source>the last numbers are written otherwise than all before: a reading, or a summary of them?</source>
        <translation>los últimos números están escritos de otro modo que todos los anteriores: ¿una lectura o un resumen de ellas?</translation>
    </message>
    <message>
        <source>the readings are %1 apart</source>
        <translation>las lecturas están a %1 una de otra</translation>
    </message>
    <message>
        <source>the sheet allows the ground to drop by %1: hardly any ground would be found bad</source>
        <translation>la hoja permite que la masa caiga %1: casi ninguna masa resultaría mala</translation>
    </message>
    <message>
        <source>the time stands still</source>
        <translation>el tiempo no avanza</translation>
    </message>
    <message>
        <source>the windows of %1 and %2 overlap in the sheet: a level may lie in both</source>
        <translation>las ventanas de %1 y %2 se solapan en la hoja: un nivel puede caer en ambas</translation>
    </message>
    <message>
        <source>time %1 may be hours and minutes or minutes and seconds</source>
        <translation>el tiempo %1 puede ser horas y minutos o minutos y segundos</translation>
    </message>
    <message>
        <source>time %1 may be seconds or a time of day</source>
        <translation>el tiempo %1 puede ser segundos o una hora del día</translation>
    </message>
    <message>
        <source>time %1 may have a decimal comma or a comma between thousands</source>
        <translation>el tiempo %1 puede llevar coma decimal o una coma entre millares</translation>
    </message>
    <message>
        <source>times are whole minutes, with several readings on each</source>
        <translation>los tiempos son minutos enteros, con varias lecturas en cada uno</translation>
    </message>
    <message>
        <source>times have no unit and are usually %1 apart</source>
        <translation>los tiempos no tienen unidad y suelen estar a %1 uno de otro</translation>
    </message>
    <message>
        <source>times without a unit are seconds</source>
        <translation>los tiempos sin unidad son segundos</translation>
    </message>
    <message>
        <source>value %1 has no unit and is too much for volts</source>
        <translation>el valor %1 no tiene unidad y es demasiado para voltios</translation>
    </message>
    <message>
        <source>values without a unit are volts</source>
        <translation>los valores sin unidad son voltios</translation>
    </message>
    <message>
        <source>volts %1 may have a decimal comma or a comma between thousands</source>
        <translation>los voltios %1 pueden llevar coma decimal o una coma entre millares</translation>
    </message>
    <message>
        <source>name one with --sheet; the levels fit %1 (`stillwire sheets` lists all)</source>
        <translation>indique una con --sheet; los niveles encajan en %1 (`stillwire sheets` las enumera todas)</translation>
    </message>
    <message>
        <source>say which with --reference-column, by its name or its number from 1</source>
        <translation>diga cuál con --reference-column, por su nombre o su número desde 1</translation>
    </message>
    <message>
        <source>say which with --time-column, by its name or its number from 1</source>
        <translation>diga cuál con --time-column, por su nombre o su número desde 1</translation>
    </message>
    <message>
        <source>say which with --volts-column, by its name or its number from 1</source>
        <translation>diga cuál con --volts-column, por su nombre o su número desde 1</translation>
    </message>
    <message>
        <source>say which with --volts-unit mV or --volts-unit V</source>
        <translation>diga cuál con --volts-unit mV o --volts-unit V</translation>
    </message>
    <message>
        <source>the reference may be in %1</source>
        <translation>la referencia puede estar en %1</translation>
    </message>
    <message>
        <source>the time may be in %1</source>
        <translation>el tiempo puede estar en %1</translation>
    </message>
    <message>
        <source>the volts may be in %1</source>
        <translation>los voltios pueden estar en %1</translation>
    </message>
    <message>
        <source>whole numbers without a unit, such as %1, may be volts or millivolts</source>
        <translation>números enteros sin unidad, como %1, pueden ser voltios o milivoltios</translation>
    </message>
</context>
<context>
    <name>names</name>
    <message>
        <source>ASCII-digit meter</source>
        <translation>Multímetro de dígitos ASCII</translation>
    </message>
    <message>
        <source>Beach cleaner depth lever</source>
        <translation>Palanca de profundidad de la limpiaplayas</translation>
    </message>
    <message>
        <source>Chafed harness</source>
        <translation>Mazo rozado</translation>
    </message>
    <message>
        <source>Chock the wheels: the pedal drives them.</source>
        <translation>Calce las ruedas: el pedal las mueve.</translation>
    </message>
    <message>
        <source>Conditioner up on its locks, blade covered.</source>
        <translation>Acondicionador arriba en sus seguros, cuchilla tapada.</translation>
    </message>
    <message>
        <source>Depth lever, fretting connector</source>
        <translation>Palanca de profundidad, conector gastado</translation>
    </message>
    <message>
        <source>Drum down on blocks before a hand goes near it.</source>
        <translation>Tambor abajo sobre tacos antes de acercar una mano.</translation>
    </message>
    <message>
        <source>Good pedal</source>
        <translation>Pedal bueno</translation>
    </message>
    <message>
        <source>LCD-segment meter</source>
        <translation>Multímetro de segmentos LCD</translation>
    </message>
    <message>
        <source>Marking trolley two-way lever</source>
        <translation>Palanca de dos sentidos del carro de marcar</translation>
    </message>
    <message>
        <source>Polled text meter</source>
        <translation>Multímetro de texto a petición</translation>
    </message>
    <message>
        <source>Release the lift&apos;s pressure; it can fall with the engine off.</source>
        <translation>Quite la presión del elevador; puede caer con el motor parado.</translation>
    </message>
    <message>
        <source>Resurfacer drive pedal</source>
        <translation>Pedal de marcha de la alisadora de hielo</translation>
    </message>
    <message>
        <source>SCPI bench meter</source>
        <translation>Multímetro de banco SCPI</translation>
    </message>
    <message>
        <source>Sagging reference</source>
        <translation>Referencia caída</translation>
    </message>
    <message>
        <source>Simulated: a good sensor, too few poses. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: un buen sensor, pocas posturas. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Simulated: a good sensor. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: un buen sensor. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Simulated: fretting at the sensor&apos;s connector. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: desgaste por vibración en el conector del sensor. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Simulated: hangs on release. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: se queda corto al soltar. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Simulated: intermittent short to ground in section 2. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: corto intermitente a masa en el tramo 2. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Simulated: resistance in the 5 V feed. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: resistencia en la alimentación de 5 V. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Simulated: the mount has slipped. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: el soporte se ha corrido. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Simulated: worn track at rest. Demo figures, not a maker&apos;s.</source>
        <translation>Simulado: pista gastada en el reposo. Cifras de demostración, no de un fabricante.</translation>
    </message>
    <message>
        <source>Spray pressure released, guns locked.</source>
        <translation>Presión de pintura quitada, pistolas bloqueadas.</translation>
    </message>
    <message>
        <source>Text-line logger</source>
        <translation>Registrador de texto</translation>
    </message>
    <message>
        <source>Two-way lever, weak spring</source>
        <translation>Palanca de dos sentidos, muelle flojo</translation>
    </message>
    <message>
        <source>Wants turning</source>
        <translation>Pide un giro</translation>
    </message>
    <message>
        <source>Wheels chocked: the lever drives both ways.</source>
        <translation>Ruedas calzadas: la palanca mueve en ambos sentidos.</translation>
    </message>
    <message>
        <source>Wiggled too little</source>
        <translation>Meneado demasiado poco</translation>
    </message>
    <message>
        <source>Worn and worst cold</source>
        <translation>Gastado, y peor en frío</translation>
    </message>
    <message>
        <source>adjust</source>
        <translation>ajuste</translation>
    </message>
    <message>
        <source>back</source>
        <translation>atrás</translation>
    </message>
    <message>
        <source>bench</source>
        <translation>guiones del banco</translation>
    </message>
    <message>
        <source>cannot-tell</source>
        <translation>no se puede saber</translation>
    </message>
    <message>
        <source>check-linkage</source>
        <translation>mirar el varillaje</translation>
    </message>
    <message>
        <source>check-supply</source>
        <translation>mirar la alimentación</translation>
    </message>
    <message>
        <source>check-wiring</source>
        <translation>mirar el cableado</translation>
    </message>
    <message>
        <source>cold-start</source>
        <translation>en frío</translation>
    </message>
    <message>
        <source>confirm</source>
        <translation>confirmación</translation>
    </message>
    <message>
        <source>deep</source>
        <translation>hundida</translation>
    </message>
    <message>
        <source>forward</source>
        <translation>adelante</translation>
    </message>
    <message>
        <source>full-press</source>
        <translation>posiciones</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>masa</translation>
    </message>
    <message>
        <source>hook-up</source>
        <translation>conexión</translation>
    </message>
    <message>
        <source>invented for demonstration</source>
        <translation>inventado para demostración</translation>
    </message>
    <message>
        <source>keep</source>
        <translation>conservar</translation>
    </message>
    <message>
        <source>left</source>
        <translation>izquierda</translation>
    </message>
    <message>
        <source>lift</source>
        <translation>tope</translation>
    </message>
    <message>
        <source>lifted</source>
        <translation>levantada</translation>
    </message>
    <message>
        <source>meters</source>
        <translation>multímetros</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>centro</translation>
    </message>
    <message>
        <source>pressed</source>
        <translation>pisado</translation>
    </message>
    <message>
        <source>put-back</source>
        <translation>final</translation>
    </message>
    <message>
        <source>reference</source>
        <translation>referencia</translation>
    </message>
    <message>
        <source>release</source>
        <translation>suelta</translation>
    </message>
    <message>
        <source>released</source>
        <translation>suelto</translation>
    </message>
    <message>
        <source>replace</source>
        <translation>cambiar</translation>
    </message>
    <message>
        <source>right</source>
        <translation>derecha</translation>
    </message>
    <message>
        <source>sheets</source>
        <translation>fichas</translation>
    </message>
    <message>
        <source>sweep</source>
        <translation>barrido</translation>
    </message>
    <message>
        <source>warm-repeat</source>
        <translation>en caliente</translation>
    </message>
    <message>
        <source>wiggle-ground</source>
        <translation>meneo en la masa</translation>
    </message>
    <message>
        <source>wiggle-harness</source>
        <translation>meneo del mazo</translation>
    </message>
    <message>
        <source>wiggle-reference</source>
        <translation>meneo en la referencia</translation>
    </message>
    <message>
        <source>wiggle-shaft</source>
        <translation>meneo del eje</translation>
    </message>
    <message>
        <source>SCPI running meter</source>
        <translation>Multímetro SCPI en marcha continua</translation>
    </message>
    <message>
        <source>connector-held</source>
        <translation>conector sujeto</translation>
    </message>
    <message>
        <source>lead-check</source>
        <translation>prueba de puntas</translation>
    </message>
</context>
<context>
    <name>stillwire::Announcer</name>
    <message>
        <source>Dropout %1: %2</source>
        <translation>Corte %1: %2</translation>
    </message>
    <message>
        <source>Verdict: %1</source>
        <translation>Dictamen: %1</translation>
    </message>
    <message>
        <source>So far: %1</source>
        <translation>Hasta ahora: %1</translation>
    </message>
</context>
<context>
    <name>stillwire::AskView</name>
    <message>
        <source>Question</source>
        <translation>Pregunta</translation>
    </message>
    <message>
        <source>go on with the run</source>
        <translation>seguir con la prueba</translation>
    </message>
    <message>
        <source>end it</source>
        <translation>terminarla</translation>
    </message>
    <message>
        <source>save elsewhere…</source>
        <translation>guardar en otro sitio…</translation>
    </message>
</context>
<context>
    <name>stillwire::BenchPage</name>
    <message>
        <source>next</source>
        <translation>seguir</translation>
    </message>
    <message>
        <source>back</source>
        <translation>atrás</translation>
    </message>
    <message>
        <source>skip</source>
        <translation>omitir</translation>
    </message>
    <message>
        <source>mute</source>
        <translation>silencio</translation>
    </message>
    <message>
        <source>leave</source>
        <translation>salir</translation>
    </message>
    <message>
        <source>keys</source>
        <translation>teclas</translation>
    </message>
    <message>
        <source>part-turn made</source>
        <translation>toque dado</translation>
    </message>
    <message>
        <source>the other way</source>
        <translation>al otro lado</translation>
    </message>
    <message>
        <source>before</source>
        <translation>anterior</translation>
    </message>
    <message>
        <source>next finding</source>
        <translation>siguiente</translation>
    </message>
    <message>
        <source>whole</source>
        <translation>todo</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abrir</translation>
    </message>
    <message>
        <source>There is no warm wiggle to lay over the cold one yet.</source>
        <translation>Aún no hay meneo en caliente que poner sobre el de en frío.</translation>
    </message>
    <message>
        <source>afar</source>
        <translation>lejos</translation>
    </message>
    <message>
        <source>folder</source>
        <translation>carpeta</translation>
    </message>
    <message>
        <source>Every finding</source>
        <translation>Todos los hallazgos</translation>
    </message>
    <message>
        <source>fewer</source>
        <translation>menos</translation>
    </message>
    <message>
        <source>+%1 more</source>
        <translation>+%1 más</translation>
    </message>
    <message>
        <source>Large words are for a led run.</source>
        <translation>Las letras grandes son para una prueba guiada.</translation>
    </message>
</context>
<context>
    <name>stillwire::BenchWindow</name>
    <message>
        <source>Open a capture</source>
        <translation>Abrir una captura</translation>
    </message>
    <message>
        <source>Captures (*.csv);;All files (*)</source>
        <translation>Capturas (*.csv);;Todos los archivos (*)</translation>
    </message>
    <message>
        <source>Save the capture elsewhere</source>
        <translation>Guardar la captura en otro sitio</translation>
    </message>
    <message>
        <source>Captures (*.csv)</source>
        <translation>Capturas (*.csv)</translation>
    </message>
    <message>
        <source>The whole run is in %1 now, and goes on there.</source>
        <translation>Toda la prueba está ahora en %1, y sigue allí.</translation>
    </message>
    <message>
        <source>A dropout is made on the simulated meter.</source>
        <translation>Se hace un corte en el multímetro simulado.</translation>
    </message>
    <message>
        <source>Only the simulated meter can be given a dropout.</source>
        <translation>Solo al multímetro simulado se le puede dar un corte.</translation>
    </message>
    <message>
        <source>Open %1 and end this run?</source>
        <translation>¿Abrir %1 y terminar esta prueba?</translation>
    </message>
    <message>
        <source>End this run?</source>
        <translation>¿Terminar esta prueba?</translation>
    </message>
    <message>
        <source>End the run here?</source>
        <translation>¿Terminar la prueba aquí?</translation>
    </message>
    <message>
        <source>Close the bench and end this run?</source>
        <translation>¿Cerrar el banco y terminar esta prueba?</translation>
    </message>
    <message>
        <source>Still wanted: %1. %2 skips the step.</source>
        <translation>Queda: %1. %2 omite el paso.</translation>
    </message>
</context>
<context>
    <name>stillwire::BriefingView</name>
    <message>
        <source>Caution</source>
        <translation>Precaución</translation>
    </message>
    <message>
        <source>Before a hand touches the machine</source>
        <translation>Antes de que una mano toque la máquina</translation>
    </message>
</context>
<context>
    <name>stillwire::CardsView</name>
    <message>
        <source>Findings</source>
        <translation>Hallazgos</translation>
    </message>
    <message>
        <source>Nothing found yet. What the wire shows will stand here.</source>
        <translation>Aún nada. Lo que muestre el cable aparecerá aquí.</translation>
    </message>
</context>
<context>
    <name>stillwire::CautionBox</name>
    <message>
        <source>Caution</source>
        <translation>Precaución</translation>
    </message>
    <message>
        <source>Cautions as before: %1</source>
        <translation>Precauciones, como antes: %1</translation>
    </message>
</context>
<context>
    <name>stillwire::DrawingView</name>
    <message>
        <source>Drawing of the step</source>
        <translation>Dibujo del paso</translation>
    </message>
</context>
<context>
    <name>stillwire::FarView</name>
    <message>
        <source>From three metres</source>
        <translation>A tres metros</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Dictamen</translation>
    </message>
    <message>
        <source>So far</source>
        <translation>Hasta ahora</translation>
    </message>
    <message>
        <source>hidden</source>
        <translation>oculto</translation>
    </message>
    <message>
        <source>Cautions as before: %1</source>
        <translation>Precauciones, como antes: %1</translation>
    </message>
</context>
<context>
    <name>stillwire::FindMeterBox</name>
    <message>
        <source>Which meter is it?</source>
        <translation>¿Qué multímetro es?</translation>
    </message>
    <message>
        <source>What the search is doing</source>
        <translation>Qué hace la búsqueda</translation>
    </message>
    <message>
        <source>How far the search is</source>
        <translation>Cuánto lleva la búsqueda</translation>
    </message>
    <message>
        <source>What was found</source>
        <translation>Qué se encontró</translation>
    </message>
    <message>
        <source>Use this meter</source>
        <translation>Usar este multímetro</translation>
    </message>
    <message>
        <source>Look again</source>
        <translation>Buscar otra vez</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Parar</translation>
    </message>
    <message>
        <source>Switch the meter on and let it send.</source>
        <translation>Encienda el multímetro y deje que envíe.</translation>
    </message>
    <message>
        <source>No port was found. Plug the meter&apos;s lead in and look again.</source>
        <translation>No se encontró ningún puerto. Enchufe el cable del multímetro y busque otra vez.</translation>
    </message>
    <message>
        <source>No meter was found.</source>
        <translation>No se encontró ningún multímetro.</translation>
    </message>
    <message>
        <source>Found. Enter takes it.</source>
        <translation>Encontrado. Intro lo elige.</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>Found, but not as it is described: see what to change.</source>
        <translation>Encontrado, pero no como se describe: vea qué cambiar.</translation>
    </message>
</context>
<context>
    <name>stillwire::GlanceTaker</name>
    <message>
        <source>moved or removed</source>
        <translation>movido o borrado</translation>
    </message>
    <message>
        <source>open it to see</source>
        <translation>ábralo para verlo</translation>
    </message>
    <message>
        <source>no readings</source>
        <translation>sin lecturas</translation>
    </message>
    <message>
        <source>without a sheet</source>
        <translation>sin ficha</translation>
    </message>
</context>
<context>
    <name>stillwire::HandPage</name>
    <message>
        <source>step %1 of %2</source>
        <translation>paso %1 de %2</translation>
    </message>
    <message>
        <source>Why: %1</source>
        <translation>Por qué: %1</translation>
    </message>
</context>
<context>
    <name>stillwire::KeysPage</name>
    <message>
        <source>Every key</source>
        <translation>Todas las teclas</translation>
    </message>
    <message>
        <source>back</source>
        <translation>volver</translation>
    </message>
    <message>
        <source>The hand, in a led run</source>
        <translation>La mano, en una prueba guiada</translation>
    </message>
    <message>
        <source>For a class, on the bench</source>
        <translation>Para una clase, en el banco</translation>
    </message>
    <message>
        <source>The wire, on the bench</source>
        <translation>El cable, en el banco</translation>
    </message>
    <message>
        <source>The window, everywhere</source>
        <translation>La ventana, en todas partes</translation>
    </message>
    <message>
        <source>Wheel</source>
        <translation>Rueda</translation>
    </message>
    <message>
        <source>earlier, later</source>
        <translation>antes, después</translation>
    </message>
    <message>
        <source>Ctrl+Wheel</source>
        <translation>Ctrl+rueda</translation>
    </message>
    <message>
        <source>a shorter or longer time on show</source>
        <translation>un tiempo más corto o más largo a la vista</translation>
    </message>
    <message>
        <source>Drag</source>
        <translation>Arrastrar</translation>
    </message>
    <message>
        <source>the trace along its time</source>
        <translation>la traza a lo largo del tiempo</translation>
    </message>
</context>
<context>
    <name>stillwire::Opener</name>
    <message>
        <source>Reading %1, %2</source>
        <translation>Leyendo %1, %2</translation>
    </message>
    <message>
        <source>%1: %2 %. Esc gives it up.</source>
        <translation>%1: %2 %. Esc abandona.</translation>
    </message>
</context>
<context>
    <name>stillwire::PaceView</name>
    <message>
        <source>Pace</source>
        <translation>Ritmo</translation>
    </message>
    <message>
        <source> s</source>
        <translation> s</translation>
    </message>
</context>
<context>
    <name>stillwire::PathView</name>
    <message>
        <source>Path of steps</source>
        <translation>Camino de pasos</translation>
    </message>
    <message>
        <source>%1 done</source>
        <translation>%1 pasos</translation>
    </message>
    <message>
        <source>%1 skipped</source>
        <translation>%1: omitido</translation>
    </message>
    <message>
        <source>%1 now</source>
        <translation>%1: ahora</translation>
    </message>
    <message>
        <source>%1 without a reading</source>
        <translation>%1 sin ninguna lectura</translation>
    </message>
</context>
<context>
    <name>stillwire::PhasesModel</name>
    <message>
        <source>%1 to %2  %3</source>
        <translation>%1 a %2  %3</translation>
    </message>
    <message>
        <source>held at %1</source>
        <translation>mantenido en %1</translation>
    </message>
</context>
<context>
    <name>stillwire::ProgressLine</name>
    <message>
        <source>Progress of the step</source>
        <translation>Avance del paso</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
</context>
<context>
    <name>stillwire::ReadoutView</name>
    <message>
        <source>The number and what is happening</source>
        <translation>El número y lo que pasa</translation>
    </message>
    <message>
        <source>%1 volts. %2, %3, %4</source>
        <translation>%1 voltios. %2, %3, %4</translation>
    </message>
    <message>
        <source>reference %1 V · level %2 V</source>
        <translation>referencia %1 V · nivel %2 V</translation>
    </message>
    <message>
        <source>reference %1 V</source>
        <translation>referencia %1 V</translation>
    </message>
</context>
<context>
    <name>stillwire::RecentsList</name>
    <message>
        <source>Recent captures</source>
        <translation>Capturas recientes</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abrir</translation>
    </message>
    <message>
        <source>Call it something else…  F2</source>
        <translation>Cambiarle el nombre…  F2</translation>
    </message>
    <message>
        <source>Write a note to it…</source>
        <translation>Escribirle una nota…</translation>
    </message>
    <message>
        <source>Show it in its folder</source>
        <translation>Mostrarla en su carpeta</translation>
    </message>
    <message>
        <source>Take it off this list; the file stays  Delete</source>
        <translation>Quitarla de la lista; el archivo se queda  Supr</translation>
    </message>
    <message>
        <source>Call it something else</source>
        <translation>Cambiarle el nombre</translation>
    </message>
    <message>
        <source>What the capture is called:</source>
        <translation>Nombre de la captura:</translation>
    </message>
    <message>
        <source>Write a note to it</source>
        <translation>Escribirle una nota</translation>
    </message>
    <message>
        <source>A line that stays with the capture:</source>
        <translation>Una línea que se queda con la captura:</translation>
    </message>
</context>
<context>
    <name>stillwire::ReplayPage</name>
    <message>
        <source>Phases</source>
        <translation>Fases</translation>
    </message>
    <message>
        <source>Reading…</source>
        <translation>Leyendo…</translation>
    </message>
    <message>
        <source>%1 readings in %2</source>
        <translation>%1 lecturas en %2</translation>
    </message>
    <message>
        <source>Recorded as %1</source>
        <translation>Grabado como %1</translation>
    </message>
    <message>
        <source>How much of the capture is judged</source>
        <translation>Cuánto de la captura está juzgado</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Hallazgos</translation>
    </message>
    <message>
        <source>Findings: %1</source>
        <translation>Hallazgos: %1</translation>
    </message>
    <message>
        <source>Phases: %1</source>
        <translation>Fases: %1</translation>
    </message>
</context>
<context>
    <name>stillwire::SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation>Ajustes</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Luz</translation>
    </message>
    <message>
        <source>as the desktop</source>
        <translation>como el escritorio</translation>
    </message>
    <message>
        <source>day</source>
        <translation>día</translation>
    </message>
    <message>
        <source>night</source>
        <translation>noche</translation>
    </message>
    <message>
        <source>Size of the type</source>
        <translation>Tamaño de la letra</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>normal</translation>
    </message>
    <message>
        <source>large</source>
        <translation>grande</translation>
    </message>
    <message>
        <source>largest</source>
        <translation>muy grande</translation>
    </message>
    <message>
        <source>Large words once the hands are busy</source>
        <translation>Letras grandes con las manos ocupadas</translation>
    </message>
    <message>
        <source>by themselves</source>
        <translation>solas</translation>
    </message>
    <message>
        <source>only by the key</source>
        <translation>solo con la tecla</translation>
    </message>
    <message>
        <source>Sound</source>
        <translation>Sonido</translation>
    </message>
    <message>
        <source>on</source>
        <translation>encendido</translation>
    </message>
    <message>
        <source>muted</source>
        <translation>en silencio</translation>
    </message>
    <message>
        <source>Voice</source>
        <translation>Voz</translation>
    </message>
    <message>
        <source>speaks the prompts</source>
        <translation>dice las indicaciones</translation>
    </message>
    <message>
        <source>says nothing</source>
        <translation>no dice nada</translation>
    </message>
    <message>
        <source>Tone that follows the voltage</source>
        <translation>Tono que sigue la tensión</translation>
    </message>
    <message>
        <source>off</source>
        <translation>apagado</translation>
    </message>
    <message>
        <source>Motion</source>
        <translation>Movimiento</translation>
    </message>
    <message>
        <source>all of it</source>
        <translation>todo</translation>
    </message>
    <message>
        <source>as little as can be</source>
        <translation>el menor posible</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>back</source>
        <translation>volver</translation>
    </message>
    <message>
        <source>Folder of the captures</source>
        <translation>Carpeta de las capturas</translation>
    </message>
    <message>
        <source>Choose a folder…</source>
        <translation>Elegir carpeta…</translation>
    </message>
    <message>
        <source>The usual one</source>
        <translation>La de siempre</translation>
    </message>
</context>
<context>
    <name>stillwire::Sounds</name>
    <message>
        <source>This computer has no sound output. Everything that would sound is shown.</source>
        <translation>Este ordenador no tiene salida de sonido. Todo lo que sonaría se muestra.</translation>
    </message>
    <message>
        <source>Muted: no tone, no voice. M sounds again.</source>
        <translation>En silencio: sin tono ni voz. M vuelve a sonar.</translation>
    </message>
    <message>
        <source>Sound is on.</source>
        <translation>El sonido está puesto.</translation>
    </message>
    <message>
        <source>A tone follows the voltage. V ends it.</source>
        <translation>Un tono sigue la tensión. V lo quita.</translation>
    </message>
    <message>
        <source>No tone follows the voltage.</source>
        <translation>Ningún tono sigue la tensión.</translation>
    </message>
    <message>
        <source>No voice for this language is installed. Everything that would be spoken is shown.</source>
        <translation>No hay voz instalada para este idioma. Todo lo que se diría se muestra.</translation>
    </message>
    <message>
        <source>Prompts are spoken. L ends it.</source>
        <translation>Las indicaciones se dicen en voz alta. L lo quita.</translation>
    </message>
    <message>
        <source>Prompts are shown, and not spoken.</source>
        <translation>Las indicaciones se muestran y no se dicen.</translation>
    </message>
</context>
<context>
    <name>stillwire::StartIntro</name>
    <message>
        <source>Clip the meter to the signal wire, key on, engine off. The bench leads the hand, watches the wire, and says what to do with the sensor.</source>
        <translation>Ponga el multímetro en el cable de señal, contacto dado, motor parado. El banco guía la mano, vigila el cable y dice qué hacer con el sensor.</translation>
    </message>
    <message>
        <source>Black lead on battery negative, red lead on a sensor wire</source>
        <translation>Punta negra en el negativo de batería, punta roja en un cable del sensor</translation>
    </message>
    <message>
        <source>Chock the wheels, lower the implement, keep bystanders clear. Nobody starts the engine. Where this bench and the maker&apos;s service literature differ, the maker is right.</source>
        <translation>Calce las ruedas, baje el apero, que nadie esté cerca. Nadie arranca el motor. Si este banco y el manual del fabricante no coinciden, manda el fabricante.</translation>
    </message>
    <message>
        <source>Tab moves on, Enter starts, F1 lists every key.</source>
        <translation>Tab avanza, Intro empieza, F1 enumera las teclas.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>Settings…</source>
        <translation>Ajustes…</translation>
    </message>
</context>
<context>
    <name>stillwire::StartNews</name>
    <message>
        <source>Give up</source>
        <translation>Abandonar</translation>
    </message>
    <message>
        <source>How much of the capture is read</source>
        <translation>Cuánto se ha leído de la captura</translation>
    </message>
    <message>
        <source>Open it</source>
        <translation>Abrirla</translation>
    </message>
    <message>
        <source>The last run was cut short. What it recorded is kept: %1</source>
        <translation>La última prueba se cortó. Lo que registró está guardado: %1</translation>
    </message>
    <message>
        <source>Put it aside</source>
        <translation>Dejarlo a un lado</translation>
    </message>
    <message>
        <source>%1 runs were cut short. What they recorded is kept; the newest: %2</source>
        <translation>Se interrumpieron %1 pruebas. Lo que grabaron se conserva; la última: %2</translation>
    </message>
</context>
<context>
    <name>stillwire::StartPage</name>
    <message>
        <source>What is on the bench?</source>
        <translation>¿Qué hay en el banco?</translation>
    </message>
    <message>
        <source>Sensor sheet</source>
        <translation>Ficha del sensor</translation>
    </message>
    <message>
        <source>A meter on a port</source>
        <translation>Un multímetro en un puerto</translation>
    </message>
    <message>
        <source>Port</source>
        <translation>Puerto</translation>
    </message>
    <message>
        <source>Start</source>
        <translation>Empezar</translation>
    </message>
    <message>
        <source>Start with the meter on this port</source>
        <translation>Empezar con el multímetro de este puerto</translation>
    </message>
    <message>
        <source>The simulated meter</source>
        <translation>El multímetro simulado</translation>
    </message>
    <message>
        <source>Pace</source>
        <translation>Ritmo</translation>
    </message>
    <message>
        <source>as fast as a hand</source>
        <translation>al ritmo de la mano</translation>
    </message>
    <message>
        <source>four times as fast</source>
        <translation>cuatro veces más rápido</translation>
    </message>
    <message>
        <source>twenty times as fast</source>
        <translation>veinte veces más rápido</translation>
    </message>
    <message>
        <source>Start the simulated meter</source>
        <translation>Empezar con el multímetro simulado</translation>
    </message>
    <message>
        <source>A capture</source>
        <translation>Una captura</translation>
    </message>
    <message>
        <source>Replay</source>
        <translation>Reproducción</translation>
    </message>
    <message>
        <source>replay at once</source>
        <translation>reproducir de golpe</translation>
    </message>
    <message>
        <source>replay as it was</source>
        <translation>reproducir como fue</translation>
    </message>
    <message>
        <source>replay ten times as fast</source>
        <translation>reproducir diez veces más rápido</translation>
    </message>
    <message>
        <source>No capture yet. The first run you make will stand here, with its verdict.</source>
        <translation>Aún no hay capturas. La primera prueba que haga aparecerá aquí, con su dictamen.</translation>
    </message>
    <message>
        <source>no sheet found</source>
        <translation>no hay fichas</translation>
    </message>
    <message>
        <source>no port found</source>
        <translation>no hay puertos</translation>
    </message>
    <message>
        <source>no meter found</source>
        <translation>no hay multímetros</translation>
    </message>
    <message>
        <source>none</source>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>Which meter is it?</source>
        <translation>¿Qué multímetro es?</translation>
    </message>
    <message>
        <source>Meter on the reference wire</source>
        <translation>Multímetro en el cable de referencia</translation>
    </message>
    <message>
        <source>Drop a file, or take a recent one.</source>
        <translation>Suelte o elija un archivo.</translation>
    </message>
    <message>
        <source>Open a file…</source>
        <translation>Abrir un archivo…</translation>
    </message>
    <message>
        <source>The sheet holds the sensor&apos;s windows from the maker&apos;s literature; the run is judged by it.</source>
        <translation>La ficha trae los márgenes del sensor según el fabricante; con ella se juzga la prueba.</translation>
    </message>
    <message>
        <source>Meter on the port</source>
        <translation>Multímetro del puerto</translation>
    </message>
    <message>
        <source>Second meter, on the reference wire</source>
        <translation>Segundo multímetro, en la referencia</translation>
    </message>
    <message>
        <source>For learning and for trying out. A scenario brings its own sheet.</source>
        <translation>Para aprender y para probar. Cada caso trae su propia ficha.</translation>
    </message>
    <message>
        <source>Scenario</source>
        <translation>Caso</translation>
    </message>
    <message>
        <source>No meter is on a port yet. Plug its lead in, switch it on, and let it be found here; or try the simulated one.</source>
        <translation>Aún no hay ningún multímetro en un puerto. Enchufe su cable, enciéndalo y búsquelo aquí; o pruebe el simulado.</translation>
    </message>
</context>
<context>
    <name>stillwire::StopView</name>
    <message>
        <source>Stop</source>
        <translation>Alto</translation>
    </message>
    <message>
        <source>Key off now</source>
        <translation>Quite el contacto ya</translation>
    </message>
    <message>
        <source>Over 5.5 V on the signal.</source>
        <translation>Más de 5.5 V en la señal.</translation>
    </message>
    <message>
        <source>the key is off</source>
        <translation>el contacto está quitado</translation>
    </message>
</context>
<context>
    <name>stillwire::TraceView</name>
    <message>
        <source>Trace of the readings</source>
        <translation>Trazo de las lecturas</translation>
    </message>
    <message>
        <source>The trace begins with the first reading.</source>
        <translation>El trazo empieza con la primera lectura.</translation>
    </message>
    <message>
        <source>cold: whole line, warm: broken line</source>
        <translation>frío: línea entera, caliente: línea a trazos</translation>
    </message>
    <message>
        <source>held here · End follows the wire again</source>
        <translation>parado aquí · Fin vuelve a seguir el cable</translation>
    </message>
</context>
<context>
    <name>stillwire::TroubleCard</name>
    <message>
        <source>Save elsewhere…  Ctrl+S</source>
        <translation>Guardar en otro sitio…  Ctrl+S</translation>
    </message>
    <message>
        <source>Save the capture elsewhere</source>
        <translation>Guardar la captura en otro sitio</translation>
    </message>
</context>
<context>
    <name>stillwire::VerdictBar</name>
    <message>
        <source>Verdict</source>
        <translation>Dictamen</translation>
    </message>
    <message>
        <source>Verdict:</source>
        <translation>Dictamen:</translation>
    </message>
    <message>
        <source>So far:</source>
        <translation>Hasta ahora:</translation>
    </message>
    <message>
        <source>hidden</source>
        <translation>oculto</translation>
    </message>
    <message>
        <source>What would you do with this sensor? H shows it.</source>
        <translation>¿Qué haría con este sensor? H lo muestra.</translation>
    </message>
</context>
<context>
    <name>stillwire::VerdictDetails</name>
    <message>
        <source>What stands behind the verdict</source>
        <translation>Lo que hay detrás del dictamen</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Siguiente</translation>
    </message>
    <message>
        <source>Nothing more to do.</source>
        <translation>Nada más que hacer.</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Por qué</translation>
    </message>
    <message>
        <source>It could also be</source>
        <translation>También podría ser</translation>
    </message>
    <message>
        <source>Not tested</source>
        <translation>Sin probar</translation>
    </message>
    <message>
        <source>Assumed</source>
        <translation>Supuesto</translation>
    </message>
</context>
<context>
    <name>stillwire::VerdictHead</name>
    <message>
        <source>Verdict</source>
        <translation>Dictamen</translation>
    </message>
    <message>
        <source>Verdict: %1. %2</source>
        <translation>Dictamen: %1. %2</translation>
    </message>
</context>
</TS>
