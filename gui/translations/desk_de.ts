<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>Core</name>
    <message>
        <source>id</source>
        <translation>Kennung</translation>
    </message>
    <message>
        <source>standard</source>
        <translation>Norm</translation>
    </message>
    <message>
        <source>composition</source>
        <translation>Zusammensetzung</translation>
    </message>
    <message>
        <source>composition from</source>
        <translation>Zusammensetzung nach</translation>
    </message>
    <message>
        <source>certificate</source>
        <translation>Zeugnis</translation>
    </message>
    <message>
        <source>typical</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>standard-maximum</source>
        <translation>Höchstwerte der Norm</translation>
    </message>
    <message>
        <source>tensile strength</source>
        <translation>Zugfestigkeit</translation>
    </message>
    <message>
        <source>yield strength</source>
        <translation>Streckgrenze</translation>
    </message>
    <message>
        <source>classification</source>
        <translation>Einteilung</translation>
    </message>
    <message>
        <source>form</source>
        <translation>Form</translation>
    </message>
    <message>
        <source>solid</source>
        <translation>Massivdraht</translation>
    </message>
    <message>
        <source>metal-cored</source>
        <translation>Metallpulverdraht</translation>
    </message>
    <message>
        <source>flux-cored</source>
        <translation>Fülldraht (Schlacke)</translation>
    </message>
    <message>
        <source>material</source>
        <translation>Werkstoff</translation>
    </message>
    <message>
        <source>diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>density</source>
        <translation>Dichte</translation>
    </message>
    <message>
        <source>alpha</source>
        <translation>alpha</translation>
    </message>
    <message>
        <source>beta</source>
        <translation>beta</translation>
    </message>
    <message>
        <source>deposition efficiency</source>
        <translation>Ausbringung</translation>
    </message>
    <message>
        <source>weld metal composition</source>
        <translation>Zusammensetzung des Schweißguts</translation>
    </message>
    <message>
        <source>hydrogen</source>
        <translation>Wasserstoff</translation>
    </message>
    <message>
        <source>price per kg</source>
        <translation>Preis je kg</translation>
    </message>
    <message>
        <source>designation</source>
        <translation>Bezeichnung</translation>
    </message>
    <message>
        <source>price per m3</source>
        <translation>Preis je m³</translation>
    </message>
    <message>
        <source>rated current</source>
        <translation>Nennstrom</translation>
    </message>
    <message>
        <source>rated duty</source>
        <translation>Nenn-Einschaltdauer</translation>
    </message>
    <message>
        <source>efficiency</source>
        <translation>Wirkungsgrad</translation>
    </message>
    <message>
        <source>half width</source>
        <translation>halbe Breite</translation>
    </message>
    <message>
        <source>frequency</source>
        <translation>Frequenz</translation>
    </message>
    <message>
        <source>dwell</source>
        <translation>Verweilen</translation>
    </message>
    <message>
        <source>positions</source>
        <translation>Positionen</translation>
    </message>
    <message>
        <source>thickness</source>
        <translation>Dicke</translation>
    </message>
    <message>
        <source>gap</source>
        <translation>Spalt</translation>
    </message>
    <message>
        <source>leg</source>
        <translation>Schenkel</translation>
    </message>
    <message>
        <source>current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>voltage</source>
        <translation>Spannung</translation>
    </message>
    <message>
        <source>wire feed speed</source>
        <translation>Drahtvorschub</translation>
    </message>
    <message>
        <source>travel speed</source>
        <translation>Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>gas flow</source>
        <translation>Gasfluss</translation>
    </message>
    <message>
        <source>heat input</source>
        <translation>Wärmeeinbringung</translation>
    </message>
    <message>
        <source>cooling time</source>
        <translation>Abkühlzeit</translation>
    </message>
    <message>
        <source>interpass</source>
        <translation>Zwischenlagentemperatur</translation>
    </message>
    <message>
        <source>hardness</source>
        <translation>Härte</translation>
    </message>
    <message>
        <source>revision</source>
        <translation>Ausgabe</translation>
    </message>
    <message>
        <source>status</source>
        <translation>Freigabe</translation>
    </message>
    <message>
        <source>draft</source>
        <translation>Entwurf</translation>
    </message>
    <message>
        <source>reviewed</source>
        <translation>geprüft</translation>
    </message>
    <message>
        <source>approved</source>
        <translation>freigegeben</translation>
    </message>
    <message>
        <source>approved by</source>
        <translation>freigegeben von</translation>
    </message>
    <message>
        <source>effective from</source>
        <translation>gültig ab</translation>
    </message>
    <message>
        <source>process</source>
        <translation>Verfahren</translation>
    </message>
    <message>
        <source>transfer</source>
        <translation>Werkstoffübergang</translation>
    </message>
    <message>
        <source>globular</source>
        <translation>grobtropfig</translation>
    </message>
    <message>
        <source>spray</source>
        <translation>Sprüh</translation>
    </message>
    <message>
        <source>pulsed</source>
        <translation>Impuls</translation>
    </message>
    <message>
        <source>waveform</source>
        <translation>Stromform</translation>
    </message>
    <message>
        <source>conventional</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>waveform-controlled</source>
        <translation>geregelt</translation>
    </message>
    <message>
        <source>polarity</source>
        <translation>Polung</translation>
    </message>
    <message>
        <source>wire</source>
        <translation>Draht</translation>
    </message>
    <message>
        <source>gas</source>
        <translation>Gas</translation>
    </message>
    <message>
        <source>power source</source>
        <translation>Stromquelle</translation>
    </message>
    <message>
        <source>arc voltage</source>
        <translation>Lichtbogenspannung</translation>
    </message>
    <message>
        <source>contact tip distance</source>
        <translation>Kontaktrohrabstand</translation>
    </message>
    <message>
        <source>arc length</source>
        <translation>Lichtbogenlänge</translation>
    </message>
    <message>
        <source>nozzle</source>
        <translation>Düse</translation>
    </message>
    <message>
        <source>work angle</source>
        <translation>Anstellwinkel quer</translation>
    </message>
    <message>
        <source>travel angle</source>
        <translation>Anstellwinkel längs</translation>
    </message>
    <message>
        <source>waveform factor</source>
        <translation>Formfaktor</translation>
    </message>
    <message>
        <source>preheat</source>
        <translation>Vorwärmung</translation>
    </message>
    <message>
        <source>weave</source>
        <translation>Pendeln</translation>
    </message>
    <message>
        <source>arc start</source>
        <translation>Zünden</translation>
    </message>
    <message>
        <source>crater fill</source>
        <translation>Kraterfüllen</translation>
    </message>
    <message>
        <source>preparation</source>
        <translation>Vorbereitung</translation>
    </message>
    <message>
        <source>backing</source>
        <translation>Badstütze</translation>
    </message>
    <message>
        <source>use</source>
        <translation>Einsatz</translation>
    </message>
    <message>
        <source>limits</source>
        <translation>Grenzen</translation>
    </message>
    <message>
        <source>qualification</source>
        <translation>Qualifizierung</translation>
    </message>
    <message>
        <source>type</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>square</source>
        <translation>I-Naht</translation>
    </message>
    <message>
        <source>single-v</source>
        <translation>V-Naht</translation>
    </message>
    <message>
        <source>double-v</source>
        <translation>DV-Naht</translation>
    </message>
    <message>
        <source>single-bevel</source>
        <translation>HV-Naht</translation>
    </message>
    <message>
        <source>double-bevel</source>
        <translation>DHV-Naht</translation>
    </message>
    <message>
        <source>single-u</source>
        <translation>U-Naht</translation>
    </message>
    <message>
        <source>angle</source>
        <translation>Winkel</translation>
    </message>
    <message>
        <source>root gap</source>
        <translation>Stegabstand</translation>
    </message>
    <message>
        <source>root face</source>
        <translation>Steghöhe</translation>
    </message>
    <message>
        <source>root radius</source>
        <translation>Wurzelradius</translation>
    </message>
    <message>
        <source>cap height</source>
        <translation>Nahtüberhöhung</translation>
    </message>
    <message>
        <source>run</source>
        <translation>Nahtstück</translation>
    </message>
    <message>
        <source>gap between runs</source>
        <translation>Lücke dazwischen</translation>
    </message>
    <message>
        <source>count</source>
        <translation>Anzahl</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>schedule</source>
        <translation>Schweißplan</translation>
    </message>
    <message>
        <source>joint</source>
        <translation>Stoß</translation>
    </message>
    <message>
        <source>corner</source>
        <translation>Eckstoß</translation>
    </message>
    <message>
        <source>butt</source>
        <translation>Stumpfstoß</translation>
    </message>
    <message>
        <source>thicknesses</source>
        <translation>Dicken</translation>
    </message>
    <message>
        <source>base metals</source>
        <translation>Grundwerkstoffe</translation>
    </message>
    <message>
        <source>throat</source>
        <translation>Nahtdicke (a-Maß)</translation>
    </message>
    <message>
        <source>groove</source>
        <translation>Fuge</translation>
    </message>
    <message>
        <source>dihedral</source>
        <translation>Öffnungswinkel</translation>
    </message>
    <message>
        <source>largest gap</source>
        <translation>größter Spalt</translation>
    </message>
    <message>
        <source>area allowance</source>
        <translation>Flächenzuschlag</translation>
    </message>
    <message>
        <source>largest leg</source>
        <translation>größter Schenkel</translation>
    </message>
    <message>
        <source>largest throat</source>
        <translation>größte Nahtdicke</translation>
    </message>
    <message>
        <source>flange width</source>
        <translation>Flanschbreite</translation>
    </message>
    <message>
        <source>position</source>
        <translation>Position</translation>
    </message>
    <message>
        <source>direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <source>either</source>
        <translation>beide</translation>
    </message>
    <message>
        <source>as-drawn</source>
        <translation>wie gezeichnet</translation>
    </message>
    <message>
        <source>schedules</source>
        <translation>Schweißpläne</translation>
    </message>
    <message>
        <source>path</source>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>intermittent</source>
        <translation>unterbrochen</translation>
    </message>
    <message>
        <source>overlap</source>
        <translation>Überlappung</translation>
    </message>
    <message>
        <source>tacks</source>
        <translation>Heftstellen</translation>
    </message>
    <message>
        <source>sense points</source>
        <translation>Suchpunkte</translation>
    </message>
    <message>
        <source>tracking</source>
        <translation>Nahtführung</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>through-arc</source>
        <translation>durch den Lichtbogen</translation>
    </message>
    <message>
        <source>optical</source>
        <translation>optisch</translation>
    </message>
    <message>
        <source>welded by</source>
        <translation>geschweißt von</translation>
    </message>
    <message>
        <source>robot</source>
        <translation>Roboter</translation>
    </message>
    <message>
        <source>manual</source>
        <translation>Hand</translation>
    </message>
    <message>
        <source>robots</source>
        <translation>Roboter</translation>
    </message>
    <message>
        <source>orientation</source>
        <translation>Lage</translation>
    </message>
    <message>
        <source>after</source>
        <translation>nach</translation>
    </message>
    <message>
        <source>balance group</source>
        <translation>Wechselgruppe</translation>
    </message>
    <message>
        <source>quality</source>
        <translation>Bewertungsgruppe</translation>
    </message>
    <message>
        <source>drawing</source>
        <translation>Zeichnung</translation>
    </message>
    <message>
        <source>parts</source>
        <translation>Teile</translation>
    </message>
    <message>
        <source>tolerance class</source>
        <translation>Toleranzklasse</translation>
    </message>
    <message>
        <source>cross-section</source>
        <translation>Querschnitt</translation>
    </message>
    <message>
        <source>load</source>
        <translation>Laden</translation>
    </message>
    <message>
        <source>unload</source>
        <translation>Entladen</translation>
    </message>
    <message>
        <source>tack</source>
        <translation>Heften</translation>
    </message>
    <message>
        <source>manual welding</source>
        <translation>Handschweißen</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>inspect</source>
        <translation>Prüfen</translation>
    </message>
    <message>
        <source>features</source>
        <translation>Merkmale</translation>
    </message>
    <message>
        <source>seams</source>
        <translation>Nähte</translation>
    </message>
    <message>
        <source>home</source>
        <translation>Grundstellung</translation>
    </message>
    <message>
        <source>loaded</source>
        <translation>bestückt mit</translation>
    </message>
    <message>
        <source>wire change</source>
        <translation>Drahtwechsel</translation>
    </message>
    <message>
        <source>air speed</source>
        <translation>Eilgang</translation>
    </message>
    <message>
        <source>air acceleration</source>
        <translation>Beschleunigung im Eilgang</translation>
    </message>
    <message>
        <source>wrist</source>
        <translation>Handgelenk</translation>
    </message>
    <message>
        <source>sense point</source>
        <translation>Suchpunkt</translation>
    </message>
    <message>
        <source>post flow</source>
        <translation>Gasnachströmen</translation>
    </message>
    <message>
        <source>orientations</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>orientation change</source>
        <translation>Lagewechsel</translation>
    </message>
    <message>
        <source>torch service</source>
        <translation>Brennerpflege</translation>
    </message>
    <message>
        <source>stations</source>
        <translation>Stationen</translation>
    </message>
    <message>
        <source>index</source>
        <translation>Weitertakten</translation>
    </message>
    <message>
        <source>zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>servers</source>
        <translation>Plätze</translation>
    </message>
    <message>
        <source>buffer after</source>
        <translation>Puffer danach</translation>
    </message>
    <message>
        <source>time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>cell</source>
        <translation>Zelle</translation>
    </message>
    <message>
        <source>availability</source>
        <translation>Verfügbarkeit</translation>
    </message>
    <message>
        <source>repair</source>
        <translation>Reparatur</translation>
    </message>
    <message>
        <source>yield</source>
        <translation>Gutanteil</translation>
    </message>
    <message>
        <source>rework to</source>
        <translation>Nacharbeit an</translation>
    </message>
    <message>
        <source>rework</source>
        <translation>Nacharbeit</translation>
    </message>
    <message>
        <source>takt</source>
        <translation>Takt</translation>
    </message>
    <message>
        <source>planning share</source>
        <translation>Planungsanteil</translation>
    </message>
    <message>
        <source>stages</source>
        <translation>Stufen</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>Seam</source>
        <translation>Naht</translation>
    </message>
    <message>
        <source>Pass</source>
        <translation>Lage</translation>
    </message>
    <message>
        <source>Schedule</source>
        <translation>Schweißplan</translation>
    </message>
    <message>
        <source>Process</source>
        <translation>Verfahren</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>Voltage</source>
        <translation>Spannung</translation>
    </message>
    <message>
        <source>Arc power</source>
        <translation>Lichtbogenleistung</translation>
    </message>
    <message>
        <source>Arc energy</source>
        <translation>Streckenenergie</translation>
    </message>
    <message>
        <source>Heat input</source>
        <translation>Wärmeeinbringung</translation>
    </message>
    <message>
        <source>Melting rate</source>
        <translation>Abschmelzleistung</translation>
    </message>
    <message>
        <source>Deposition rate</source>
        <translation>Auftragleistung</translation>
    </message>
    <message>
        <source>Deposit area</source>
        <translation>Auftragfläche</translation>
    </message>
    <message>
        <source>Penetration</source>
        <translation>Einbrand</translation>
    </message>
    <message>
        <source>Transfer</source>
        <translation>Übergang</translation>
    </message>
    <message>
        <source>t8/5</source>
        <translation>t8/5</translation>
    </message>
    <message>
        <source>Heat flow</source>
        <translation>Wärmeabfluss</translation>
    </message>
    <message>
        <source>t8/5 span</source>
        <translation>t8/5 Spanne</translation>
    </message>
    <message>
        <source>t8/5 by plate</source>
        <translation>t8/5 je Blech</translation>
    </message>
    <message>
        <source>t8/5 hot</source>
        <translation>t8/5 heiß</translation>
    </message>
    <message>
        <source>Preheat needed</source>
        <translation>Vorwärmung nötig</translation>
    </message>
    <message>
        <source>CE</source>
        <translation>CE</translation>
    </message>
    <message>
        <source>CET</source>
        <translation>CET</translation>
    </message>
    <message>
        <source>Pcm</source>
        <translation>Pcm</translation>
    </message>
    <message>
        <source>CEN</source>
        <translation>CEN</translation>
    </message>
    <message>
        <source>HAZ hardness</source>
        <translation>WEZ-Härte</translation>
    </message>
    <message>
        <source>Arc time</source>
        <translation>Lichtbogenzeit</translation>
    </message>
    <message>
        <source>Wire</source>
        <translation>Draht</translation>
    </message>
    <message>
        <source>Gas</source>
        <translation>Gas</translation>
    </message>
    <message>
        <source>Energy</source>
        <translation>Energie</translation>
    </message>
    <message>
        <source>U heat input</source>
        <translation>U Wärmeeinbr.</translation>
    </message>
    <message>
        <source>U t8/5</source>
        <translation>U t8/5</translation>
    </message>
    <message>
        <source>Leg</source>
        <translation>Schenkel</translation>
    </message>
    <message>
        <source>Leg needed</source>
        <translation>Schenkel nötig</translation>
    </message>
    <message>
        <source>Throat</source>
        <translation>a-Maß</translation>
    </message>
    <message>
        <source>Throat needed</source>
        <translation>a-Maß nötig</translation>
    </message>
    <message>
        <source>Area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>Area needed</source>
        <translation>Fläche nötig</translation>
    </message>
    <message>
        <source>Interpass wait</source>
        <translation>Zwischenlagenpause</translation>
    </message>
    <message>
        <source>Angular distortion</source>
        <translation>Winkelverzug</translation>
    </message>
    <message>
        <source>U leg</source>
        <translation>U Schenkel</translation>
    </message>
    <message>
        <source>Cost</source>
        <translation>Kosten</translation>
    </message>
    <message>
        <source>Robot share</source>
        <translation>Roboteranteil</translation>
    </message>
    <message>
        <source>of deposit</source>
        <translation>vom Auftrag</translation>
    </message>
    <message>
        <source>of arc time</source>
        <translation>von der Lichtbogenzeit</translation>
    </message>
    <message>
        <source>Bow</source>
        <translation>Durchbiegung</translation>
    </message>
    <message>
        <source>power sources</source>
        <translation>Stromquellen</translation>
    </message>
    <message>
        <source>wires</source>
        <translation>Drähte</translation>
    </message>
    <message>
        <source>gases</source>
        <translation>Gase</translation>
    </message>
    <message>
        <source>qualifications</source>
        <translation>Qualifizierungen</translation>
    </message>
    <message>
        <source>instruments</source>
        <translation>Messmittel</translation>
    </message>
    <message>
        <source>costs</source>
        <translation>Kosten</translation>
    </message>
    <message>
        <source>measuring</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>tested weld</source>
        <translation>Prüfschweißung</translation>
    </message>
    <message>
        <source>quantity</source>
        <translation>Menge</translation>
    </message>
    <message>
        <source>kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>points</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>nominal size</source>
        <translation>Nennmaß</translation>
    </message>
    <message>
        <source>nominal angle</source>
        <translation>Nennwinkel</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>second moment of area</source>
        <translation>Flächenmoment 2. Grades</translation>
    </message>
    <message>
        <source>neutral axis</source>
        <translation>neutrale Achse</translation>
    </message>
    <message>
        <source>of</source>
        <translation>bezogen auf</translation>
    </message>
    <message>
        <source>full scale</source>
        <translation>Endwert</translation>
    </message>
    <message>
        <source>calibration due</source>
        <translation>Kalibrierung gültig bis</translation>
    </message>
    <message>
        <source>lead resistance</source>
        <translation>Leitungswiderstand</translation>
    </message>
    <message>
        <source>robot per h</source>
        <translation>Roboter je h</translation>
    </message>
    <message>
        <source>labour per h</source>
        <translation>Arbeit je h</translation>
    </message>
    <message>
        <source>energy per kWh</source>
        <translation>Energie je kWh</translation>
    </message>
    <message>
        <source>currency</source>
        <translation>Währung</translation>
    </message>
    <message>
        <source>uncertainty of current</source>
        <translation>Unsicherheit des Stroms</translation>
    </message>
    <message>
        <source>uncertainty of voltage</source>
        <translation>Unsicherheit der Spannung</translation>
    </message>
    <message>
        <source>uncertainty of travel speed</source>
        <translation>Unsicherheit der Geschwindigkeit</translation>
    </message>
    <message>
        <source>decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>basis</source>
        <translation>Grundlage</translation>
    </message>
    <message>
        <source>date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>last used</source>
        <translation>zuletzt benutzt</translation>
    </message>
    <message>
        <source>material group</source>
        <translation>Werkstoffgruppe</translation>
    </message>
    <message>
        <source>filler</source>
        <translation>Zusatz</translation>
    </message>
    <message>
        <source>mechanisation</source>
        <translation>Mechanisierung</translation>
    </message>
    <message>
        <source>impact tested</source>
        <translation>Kerbschlag geprüft</translation>
    </message>
    <message>
        <source>hardness tested</source>
        <translation>Härte geprüft</translation>
    </message>
    <message>
        <source>runs</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>rotation</source>
        <translation>Drehung</translation>
    </message>
    <message>
        <source>every</source>
        <translation>alle</translation>
    </message>
    <message>
        <source>arc time between</source>
        <translation>Lichtbogenzeit dazwischen</translation>
    </message>
    <message>
        <source>Name by which seams refer to this metal.</source>
        <translation>Name, mit dem Nähte diesen Werkstoff nennen.</translation>
    </message>
    <message>
        <source>Standard and grade, such as EN 10025-2 S355J2.</source>
        <translation>Norm und Sorte, etwa EN 10025-2 S355J2.</translation>
    </message>
    <message>
        <source>Mass percentages by element symbol; an element that is left out is not reported.</source>
        <translation>Massenanteile nach Elementzeichen; was fehlt, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Where the composition comes from.</source>
        <translation>Woher die Zusammensetzung stammt.</translation>
    </message>
    <message>
        <source>Ultimate tensile strength.</source>
        <translation>Zugfestigkeit.</translation>
    </message>
    <message>
        <source>Yield strength.</source>
        <translation>Streckgrenze.</translation>
    </message>
    <message>
        <source>Name by which schedules and robots refer to this wire.</source>
        <translation>Name, mit dem Schweißpläne und Roboter diesen Draht nennen.</translation>
    </message>
    <message>
        <source>Designation by standard, such as ISO 14341-A G 42 4 M21 3Si1.</source>
        <translation>Bezeichnung nach Norm, etwa ISO 14341-A G 42 4 M21 3Si1.</translation>
    </message>
    <message>
        <source>How the wire is built.</source>
        <translation>Wie der Draht aufgebaut ist.</translation>
    </message>
    <message>
        <source>Material of the wire, such as mild-steel or stainless.</source>
        <translation>Werkstoff des Drahts, etwa mild-steel oder stainless.</translation>
    </message>
    <message>
        <source>Diameter of the wire.</source>
        <translation>Durchmesser des Drahts.</translation>
    </message>
    <message>
        <source>Density of the wire as fed: a cored wire&apos;s is lower than that of its metal.</source>
        <translation>Dichte des zugeführten Drahts: bei Fülldraht kleiner als die seines Metalls.</translation>
    </message>
    <message>
        <source>Coefficient of the current in the melting law W = alpha*I + beta*l*I^2.</source>
        <translation>Beiwert des Stroms im Abschmelzgesetz W = alpha*I + beta*l*I^2.</translation>
    </message>
    <message>
        <source>Coefficient of resistance heating in the melting law W = alpha*I + beta*l*I^2.</source>
        <translation>Beiwert der Widerstandswärme im Abschmelzgesetz W = alpha*I + beta*l*I^2.</translation>
    </message>
    <message>
        <source>Share of the melted wire&apos;s mass that stays in the weld.</source>
        <translation>Anteil der abgeschmolzenen Masse, der in der Naht bleibt.</translation>
    </message>
    <message>
        <source>Diffusible hydrogen of the deposited metal.</source>
        <translation>Diffusibler Wasserstoff des Schweißguts.</translation>
    </message>
    <message>
        <source>Price of a kilogram, in the currency of the costs.</source>
        <translation>Preis eines Kilogramms in der Währung der Kosten.</translation>
    </message>
    <message>
        <source>Name by which schedules and robots refer to this gas.</source>
        <translation>Name, mit dem Schweißpläne und Roboter dieses Gas nennen.</translation>
    </message>
    <message>
        <source>Designation by ISO 14175, such as ISO 14175 M21-ArC-18.</source>
        <translation>Bezeichnung nach ISO 14175, etwa ISO 14175 M21-ArC-18.</translation>
    </message>
    <message>
        <source>Price of a cubic metre, in the currency of the costs.</source>
        <translation>Preis eines Kubikmeters in der Währung der Kosten.</translation>
    </message>
    <message>
        <source>Name by which schedules and robots refer to this power source.</source>
        <translation>Name, mit dem Schweißpläne und Roboter diese Stromquelle nennen.</translation>
    </message>
    <message>
        <source>Current that the source can give at its rated duty cycle.</source>
        <translation>Strom, den die Quelle bei ihrer Nenn-Einschaltdauer gibt.</translation>
    </message>
    <message>
        <source>Duty cycle at the rated current, share of ten minutes.</source>
        <translation>Einschaltdauer beim Nennstrom, Anteil an zehn Minuten.</translation>
    </message>
    <message>
        <source>Arc power over the power drawn from the mains.</source>
        <translation>Lichtbogenleistung zur Leistung aus dem Netz.</translation>
    </message>
    <message>
        <source>Way of the torch from the seam&apos;s line to either side.</source>
        <translation>Weg des Brenners von der Nahtlinie nach jeder Seite.</translation>
    </message>
    <message>
        <source>Weaves in a second.</source>
        <translation>Pendelungen je Sekunde.</translation>
    </message>
    <message>
        <source>Time for which the torch rests at each side.</source>
        <translation>Zeit, die der Brenner an jeder Seite verweilt.</translation>
    </message>
    <message>
        <source>Welding positions by ISO 6947 in which the schedule may be used; none named: any.</source>
        <translation>Schweißpositionen nach ISO 6947, in denen der Plan gilt; keine genannt: jede.</translation>
    </message>
    <message>
        <source>Plate thickness, from and to.</source>
        <translation>Blechdicke, von und bis.</translation>
    </message>
    <message>
        <source>Gap of the joint, from and to.</source>
        <translation>Spalt des Stoßes, von und bis.</translation>
    </message>
    <message>
        <source>Leg of the fillet, from and to.</source>
        <translation>Schenkel der Kehlnaht, von und bis.</translation>
    </message>
    <message>
        <source>Welding current, from and to.</source>
        <translation>Schweißstrom, von und bis.</translation>
    </message>
    <message>
        <source>Arc voltage, from and to.</source>
        <translation>Lichtbogenspannung, von und bis.</translation>
    </message>
    <message>
        <source>Wire feed speed, from and to.</source>
        <translation>Drahtvorschub, von und bis.</translation>
    </message>
    <message>
        <source>Travel speed, from and to.</source>
        <translation>Schweißgeschwindigkeit, von und bis.</translation>
    </message>
    <message>
        <source>Gas flow, from and to.</source>
        <translation>Gasfluss, von und bis.</translation>
    </message>
    <message>
        <source>Heat input with the process&apos;s thermal efficiency, from and to.</source>
        <translation>Wärmeeinbringung mit dem thermischen Wirkungsgrad des Verfahrens, von und bis.</translation>
    </message>
    <message>
        <source>Cooling time t8/5, from and to.</source>
        <translation>Abkühlzeit t8/5, von und bis.</translation>
    </message>
    <message>
        <source>Interpass temperature, from and to.</source>
        <translation>Zwischenlagentemperatur, von und bis.</translation>
    </message>
    <message>
        <source>Hardness of the heat-affected zone, from and to.</source>
        <translation>Härte der Wärmeeinflusszone, von und bis.</translation>
    </message>
    <message>
        <source>Name by which seams refer to this schedule.</source>
        <translation>Name, mit dem Nähte diesen Schweißplan nennen.</translation>
    </message>
    <message>
        <source>Number of this revision.</source>
        <translation>Nummer dieser Ausgabe.</translation>
    </message>
    <message>
        <source>How far its release has come.</source>
        <translation>Wie weit die Freigabe ist.</translation>
    </message>
    <message>
        <source>Who approved it.</source>
        <translation>Wer ihn freigegeben hat.</translation>
    </message>
    <message>
        <source>First day on which it may be used.</source>
        <translation>Erster Tag, an dem er gelten darf.</translation>
    </message>
    <message>
        <source>Welding process, its number by ISO 4063.</source>
        <translation>Schweißverfahren, Nummer nach ISO 4063.</translation>
    </message>
    <message>
        <source>How the metal crosses the arc.</source>
        <translation>Wie das Metall den Lichtbogen quert.</translation>
    </message>
    <message>
        <source>Whether the power source controls the waveform.</source>
        <translation>Ob die Stromquelle die Stromform regelt.</translation>
    </message>
    <message>
        <source>Polarity of the electrode, such as DC+.</source>
        <translation>Polung der Elektrode, etwa DC+.</translation>
    </message>
    <message>
        <source>The wire that is fed.</source>
        <translation>Der zugeführte Draht.</translation>
    </message>
    <message>
        <source>The shielding gas.</source>
        <translation>Das Schutzgas.</translation>
    </message>
    <message>
        <source>The power source.</source>
        <translation>Die Stromquelle.</translation>
    </message>
    <message>
        <source>Speed at which the wire is fed.</source>
        <translation>Geschwindigkeit, mit der der Draht zugeführt wird.</translation>
    </message>
    <message>
        <source>Mean voltage, measured near the arc.</source>
        <translation>Mittlere Spannung, nahe am Lichtbogen gemessen.</translation>
    </message>
    <message>
        <source>Speed of the torch along the seam.</source>
        <translation>Geschwindigkeit des Brenners längs der Naht.</translation>
    </message>
    <message>
        <source>From the contact tip to the work: electrode extension and arc together.</source>
        <translation>Vom Kontaktrohr zum Werkstück: freies Drahtende und Lichtbogen zusammen.</translation>
    </message>
    <message>
        <source>Length of the arc; less than the contact tip distance.</source>
        <translation>Länge des Lichtbogens; kleiner als der Kontaktrohrabstand.</translation>
    </message>
    <message>
        <source>Flow of shielding gas.</source>
        <translation>Fluss des Schutzgases.</translation>
    </message>
    <message>
        <source>Inner diameter of the gas nozzle.</source>
        <translation>Innendurchmesser der Gasdüse.</translation>
    </message>
    <message>
        <source>Angle of the torch across the seam.</source>
        <translation>Winkel des Brenners quer zur Naht.</translation>
    </message>
    <message>
        <source>Angle of the torch along the seam.</source>
        <translation>Winkel des Brenners längs der Naht.</translation>
    </message>
    <message>
        <source>Mean current where it was measured; left out, it follows from the melting law.</source>
        <translation>Mittlerer Strom, wo er gemessen wurde; sonst folgt er aus dem Abschmelzgesetz.</translation>
    </message>
    <message>
        <source>Mean of voltage times current over the product of their means.</source>
        <translation>Mittel aus Spannung mal Strom durch das Produkt ihrer Mittel.</translation>
    </message>
    <message>
        <source>Temperature of the plate before welding; above 500 C there is no cooling time from 800 to 500 C.</source>
        <translation>Temperatur des Blechs vor dem Schweißen; über 500 °C gibt es keine Abkühlzeit von 800 auf 500 °C.</translation>
    </message>
    <message>
        <source>How the torch weaves; left out, it doesn&apos;t.</source>
        <translation>Wie der Brenner pendelt; ohne Angabe gar nicht.</translation>
    </message>
    <message>
        <source>Time to start the arc; overrides the robot&apos;s.</source>
        <translation>Zeit zum Zünden; geht der des Roboters vor.</translation>
    </message>
    <message>
        <source>Time to fill the crater; overrides the robot&apos;s.</source>
        <translation>Zeit zum Kraterfüllen; geht der des Roboters vor.</translation>
    </message>
    <message>
        <source>How the joint is prepared.</source>
        <translation>Wie der Stoß vorbereitet wird.</translation>
    </message>
    <message>
        <source>What backs the root.</source>
        <translation>Was die Wurzel stützt.</translation>
    </message>
    <message>
        <source>Where the schedule may be used.</source>
        <translation>Wo der Schweißplan gelten darf.</translation>
    </message>
    <message>
        <source>Limits that what follows from the schedule must keep.</source>
        <translation>Grenzen, die das aus dem Plan Folgende halten muss.</translation>
    </message>
    <message>
        <source>The procedure qualification that covers it.</source>
        <translation>Die Verfahrensqualifizierung, die ihn deckt.</translation>
    </message>
    <message>
        <source>Kind of groove.</source>
        <translation>Art der Fuge.</translation>
    </message>
    <message>
        <source>Included angle of a V, else the angle of the bevel or wall.</source>
        <translation>Öffnungswinkel einer V-Naht, sonst Winkel der Flanke.</translation>
    </message>
    <message>
        <source>Gap at the root.</source>
        <translation>Abstand an der Wurzel.</translation>
    </message>
    <message>
        <source>Height of the root face.</source>
        <translation>Höhe des Stegs.</translation>
    </message>
    <message>
        <source>Radius at the root of a U.</source>
        <translation>Radius am Grund einer U-Naht.</translation>
    </message>
    <message>
        <source>Height of the cap above the plate.</source>
        <translation>Höhe der Überwölbung über dem Blech.</translation>
    </message>
    <message>
        <source>Length of each run of weld.</source>
        <translation>Länge jedes Nahtstücks.</translation>
    </message>
    <message>
        <source>Way from one run to the next.</source>
        <translation>Weg von einem Stück zum nächsten.</translation>
    </message>
    <message>
        <source>How many tacks hold the joint.</source>
        <translation>Wie viele Heftstellen den Stoß halten.</translation>
    </message>
    <message>
        <source>Length of a tack.</source>
        <translation>Länge einer Heftstelle.</translation>
    </message>
    <message>
        <source>Leg of a tack.</source>
        <translation>Schenkel einer Heftstelle.</translation>
    </message>
    <message>
        <source>Schedule by which they are laid.</source>
        <translation>Schweißplan, nach dem sie gelegt werden.</translation>
    </message>
    <message>
        <source>Name of the seam within its weldment.</source>
        <translation>Name der Naht in ihrem Bauteil.</translation>
    </message>
    <message>
        <source>Kind of joint; a corner is an inside corner.</source>
        <translation>Art des Stoßes; ein Eckstoß ist eine innere Ecke.</translation>
    </message>
    <message>
        <source>Thickness of each of the two plates.</source>
        <translation>Dicke jedes der zwei Bleche.</translation>
    </message>
    <message>
        <source>Metal of each of the two plates, the through plate first.</source>
        <translation>Werkstoff jedes der zwei Bleche, das durchgehende zuerst.</translation>
    </message>
    <message>
        <source>Leg of the fillet, as drawn.</source>
        <translation>Schenkel der Kehlnaht, wie gezeichnet.</translation>
    </message>
    <message>
        <source>Throat of the fillet, as drawn.</source>
        <translation>Nahtdicke der Kehlnaht, wie gezeichnet.</translation>
    </message>
    <message>
        <source>The groove that is filled.</source>
        <translation>Die Fuge, die gefüllt wird.</translation>
    </message>
    <message>
        <source>Angle between the plates.</source>
        <translation>Winkel zwischen den Blechen.</translation>
    </message>
    <message>
        <source>Gap between the plates.</source>
        <translation>Spalt zwischen den Blechen.</translation>
    </message>
    <message>
        <source>Gap at which the seam is judged.</source>
        <translation>Spalt, bei dem die Naht beurteilt wird.</translation>
    </message>
    <message>
        <source>Deposit over what the nominal section takes.</source>
        <translation>Auftrag über das hinaus, was der Nennquerschnitt braucht.</translation>
    </message>
    <message>
        <source>Mass percentages of the undiluted weld metal: preheat goes by it where it is richer than the plates.</source>
        <translation>Massenanteile des unvermischten Schweißguts: Nach ihm richtet sich die Vorwärmung, wo es reicher legiert ist als die Bleche.</translation>
    </message>
    <message>
        <source>Leg that the fillet obtained may have at most; fit and window keep to it.</source>
        <translation>Schenkel, den die erreichte Kehlnaht höchstens haben darf; Anpassung und Arbeitsfenster halten ihn ein.</translation>
    </message>
    <message>
        <source>Throat that the fillet obtained may have at most; fit and window keep to it.</source>
        <translation>Nahtdicke, die die erreichte Kehlnaht höchstens haben darf; Anpassung und Arbeitsfenster halten sie ein.</translation>
    </message>
    <message>
        <source>Width of the flange that the fillet pulls round.</source>
        <translation>Breite des Flanschs, den die Kehlnaht verzieht.</translation>
    </message>
    <message>
        <source>Welding position by ISO 6947.</source>
        <translation>Schweißposition nach ISO 6947.</translation>
    </message>
    <message>
        <source>Whether the seam may be welded from its end to its beginning.</source>
        <translation>Ob die Naht vom Ende zum Anfang geschweißt werden darf.</translation>
    </message>
    <message>
        <source>The schedule of each pass, in order.</source>
        <translation>Der Schweißplan jeder Lage, der Reihe nach.</translation>
    </message>
    <message>
        <source>Points of the seam&apos;s line: [x, y, z].</source>
        <translation>Punkte der Nahtlinie: [x, y, z].</translation>
    </message>
    <message>
        <source>Runs of weld with gaps between (ISO 2553).</source>
        <translation>Nahtstücke mit Lücken (ISO 2553).</translation>
    </message>
    <message>
        <source>How far a closed seam runs over its beginning.</source>
        <translation>Wie weit eine geschlossene Naht über ihren Anfang läuft.</translation>
    </message>
    <message>
        <source>The tacks that hold the joint.</source>
        <translation>Die Heftstellen, die den Stoß halten.</translation>
    </message>
    <message>
        <source>Touches that find the seam.</source>
        <translation>Berührungen, die die Naht finden.</translation>
    </message>
    <message>
        <source>How the robot follows the seam.</source>
        <translation>Wie der Roboter der Naht folgt.</translation>
    </message>
    <message>
        <source>Who welds it.</source>
        <translation>Wer sie schweißt.</translation>
    </message>
    <message>
        <source>Robots that reach it; none named: all.</source>
        <translation>Roboter, die sie erreichen; keiner genannt: alle.</translation>
    </message>
    <message>
        <source>Orientation of the positioner in which it is welded.</source>
        <translation>Lage des Positionierers, in der sie geschweißt wird.</translation>
    </message>
    <message>
        <source>Seams that must be welded before.</source>
        <translation>Nähte, die vorher geschweißt sein müssen.</translation>
    </message>
    <message>
        <source>Name of a group whose seams are welded by turns.</source>
        <translation>Name einer Gruppe, deren Nähte im Wechsel geschweißt werden.</translation>
    </message>
    <message>
        <source>Quality level by ISO 5817.</source>
        <translation>Bewertungsgruppe nach ISO 5817.</translation>
    </message>
    <message>
        <source>Name of the weldment, as orders and logs have it.</source>
        <translation>Name des Bauteils, wie Aufträge und Protokolle ihn führen.</translation>
    </message>
    <message>
        <source>Number of its drawing.</source>
        <translation>Nummer seiner Zeichnung.</translation>
    </message>
    <message>
        <source>The parts that it takes.</source>
        <translation>Die Teile, die es braucht.</translation>
    </message>
    <message>
        <source>Class by ISO 13920: A to D, and E to H for straightness.</source>
        <translation>Klasse nach ISO 13920: A bis D, und E bis H für Geradheit.</translation>
    </message>
    <message>
        <source>Its cross-section, for bow and shortening.</source>
        <translation>Sein Querschnitt, für Durchbiegung und Verkürzung.</translation>
    </message>
    <message>
        <source>Time to load it into the cell.</source>
        <translation>Zeit, es in die Zelle zu laden.</translation>
    </message>
    <message>
        <source>Time to unload it from the cell.</source>
        <translation>Zeit, es aus der Zelle zu nehmen.</translation>
    </message>
    <message>
        <source>Time to set and tack it.</source>
        <translation>Zeit zum Spannen und Heften.</translation>
    </message>
    <message>
        <source>Time for its manual seams.</source>
        <translation>Zeit für seine Handnähte.</translation>
    </message>
    <message>
        <source>Time to measure it.</source>
        <translation>Zeit zum Messen.</translation>
    </message>
    <message>
        <source>Time to inspect it.</source>
        <translation>Zeit zum Prüfen.</translation>
    </message>
    <message>
        <source>What is measured on it.</source>
        <translation>Was an ihm gemessen wird.</translation>
    </message>
    <message>
        <source>Its seams.</source>
        <translation>Seine Nähte.</translation>
    </message>
    <message>
        <source>Name by which seams and instruments refer to this robot.</source>
        <translation>Name, mit dem Nähte und Messmittel diesen Roboter nennen.</translation>
    </message>
    <message>
        <source>Where the torch begins and ends a cycle.</source>
        <translation>Wo der Brenner einen Ablauf beginnt und beendet.</translation>
    </message>
    <message>
        <source>What it has loaded; left out, it welds with anything.</source>
        <translation>Womit er bestückt ist; ohne Angabe mit allem.</translation>
    </message>
    <message>
        <source>Time to change the wire; null or left out: it can&apos;t.</source>
        <translation>Zeit für den Drahtwechsel; ohne Angabe kann er nicht.</translation>
    </message>
    <message>
        <source>Speed of the torch off the seams.</source>
        <translation>Geschwindigkeit des Brenners abseits der Nähte.</translation>
    </message>
    <message>
        <source>Acceleration of the torch off the seams.</source>
        <translation>Beschleunigung des Brenners abseits der Nähte.</translation>
    </message>
    <message>
        <source>Time that the wrist adds to each air move.</source>
        <translation>Zeit, die das Handgelenk jedem Eilgang hinzufügt.</translation>
    </message>
    <message>
        <source>Time of one touch.</source>
        <translation>Zeit einer Berührung.</translation>
    </message>
    <message>
        <source>Time to start the arc.</source>
        <translation>Zeit zum Zünden.</translation>
    </message>
    <message>
        <source>Time to fill the crater.</source>
        <translation>Zeit zum Kraterfüllen.</translation>
    </message>
    <message>
        <source>Time for which gas flows on after the arc.</source>
        <translation>Zeit, die das Gas nachströmt.</translation>
    </message>
    <message>
        <source>The robots of the cell.</source>
        <translation>Die Roboter der Zelle.</translation>
    </message>
    <message>
        <source>The positioner&apos;s orientations.</source>
        <translation>Die Lagen des Positionierers.</translation>
    </message>
    <message>
        <source>Time to change the positioner&apos;s orientation.</source>
        <translation>Zeit für einen Lagewechsel des Positionierers.</translation>
    </message>
    <message>
        <source>Cleaning and cutting of the torch.</source>
        <translation>Reinigen und Schneiden am Brenner.</translation>
    </message>
    <message>
        <source>1: loaded where it is welded; 2: loaded while the other one is welded.</source>
        <translation>1: geladen, wo geschweißt wird; 2: geladen, während an der anderen geschweißt wird.</translation>
    </message>
    <message>
        <source>Time to swap the two stations.</source>
        <translation>Zeit, die zwei Stationen zu tauschen.</translation>
    </message>
    <message>
        <source>Places where only one robot may be.</source>
        <translation>Stellen, an denen nur ein Roboter sein darf.</translation>
    </message>
    <message>
        <source>Name of the stage.</source>
        <translation>Name der Stufe.</translation>
    </message>
    <message>
        <source>Units that it works on at once.</source>
        <translation>Einheiten, an denen sie zugleich arbeitet.</translation>
    </message>
    <message>
        <source>Units that may wait behind it.</source>
        <translation>Einheiten, die dahinter warten dürfen.</translation>
    </message>
    <message>
        <source>What gives its time for a unit: a weldment&apos;s or the cell&apos;s time by name, or seconds.</source>
        <translation>Woher ihre Zeit je Einheit kommt: eine Zeit des Bauteils oder der Zelle, oder Sekunden.</translation>
    </message>
    <message>
        <source>Share of time in which it can work.</source>
        <translation>Anteil der Zeit, in der sie arbeiten kann.</translation>
    </message>
    <message>
        <source>Mean time of a stop.</source>
        <translation>Mittlere Dauer eines Stillstands.</translation>
    </message>
    <message>
        <source>Share of units that leave it right.</source>
        <translation>Anteil der Einheiten, die sie gut verlassen.</translation>
    </message>
    <message>
        <source>Stage to which the others go back.</source>
        <translation>Stufe, zu der die anderen zurückgehen.</translation>
    </message>
    <message>
        <source>Time that rework takes there.</source>
        <translation>Zeit der Nacharbeit dort.</translation>
    </message>
    <message>
        <source>Time in which the line wants one unit.</source>
        <translation>Zeit, in der die Linie eine Einheit will.</translation>
    </message>
    <message>
        <source>Share of takt to plan to.</source>
        <translation>Anteil des Takts, auf den geplant wird.</translation>
    </message>
    <message>
        <source>The stages, in the order in which a unit passes them.</source>
        <translation>Die Stufen in der Folge, in der eine Einheit sie durchläuft.</translation>
    </message>
    <message>
        <source>Pass, counted from 1</source>
        <translation>Lage, ab 1 gezählt</translation>
    </message>
    <message>
        <source>Schedule of this pass</source>
        <translation>Schweißplan dieser Lage</translation>
    </message>
    <message>
        <source>Process number of ISO 4063</source>
        <translation>Verfahrensnummer der ISO 4063</translation>
    </message>
    <message>
        <source>Welded length of the pass</source>
        <translation>Geschweißte Länge der Lage</translation>
    </message>
    <message>
        <source>Measured mean, else from the melting law</source>
        <translation>Gemessenes Mittel, sonst aus dem Abschmelzgesetz</translation>
    </message>
    <message>
        <source>Arc voltage</source>
        <translation>Lichtbogenspannung</translation>
    </message>
    <message>
        <source>Voltage x current x waveform factor</source>
        <translation>Spannung x Strom x Formfaktor</translation>
    </message>
    <message>
        <source>Arc power over travel speed, without efficiency</source>
        <translation>Lichtbogenleistung durch Geschwindigkeit, ohne Wirkungsgrad</translation>
    </message>
    <message>
        <source>Arc energy x thermal efficiency of the process</source>
        <translation>Streckenenergie x thermischer Wirkungsgrad des Verfahrens</translation>
    </message>
    <message>
        <source>Wire melted an hour of arc</source>
        <translation>Abgeschmolzener Draht je Stunde Lichtbogen</translation>
    </message>
    <message>
        <source>Melting rate x deposition efficiency</source>
        <translation>Abschmelzleistung x Ausbringung</translation>
    </message>
    <message>
        <source>Cross-section that the pass lays</source>
        <translation>Querschnitt, den die Lage legt</translation>
    </message>
    <message>
        <source>Rough estimate, bead on plate</source>
        <translation>Grobe Schätzung, Blindraupe</translation>
    </message>
    <message>
        <source>Metal transfer</source>
        <translation>Werkstoffübergang</translation>
    </message>
    <message>
        <source>Cooling time 800 to 500 C, thinner plate, as preheated</source>
        <translation>Abkühlzeit von 800 auf 500 °C, dünneres Blech, wie vorgewärmt</translation>
    </message>
    <message>
        <source>Two- or three-dimensional heat flow</source>
        <translation>Zwei- oder dreidimensionaler Wärmeabfluss</translation>
    </message>
    <message>
        <source>Over the range of the shape factor</source>
        <translation>Über den Bereich des Nahtfaktors</translation>
    </message>
    <message>
        <source>Each plate&apos;s own</source>
        <translation>Jedes Blech für sich</translation>
    </message>
    <message>
        <source>From the upper interpass limit, thinner plate</source>
        <translation>Von der oberen Zwischenlagengrenze, dünneres Blech</translation>
    </message>
    <message>
        <source>Method B of EN 1011-2, thicker plate</source>
        <translation>Methode B der EN 1011-2, dickeres Blech</translation>
    </message>
    <message>
        <source>Carbon equivalent, IIW</source>
        <translation>Kohlenstoffäquivalent, IIW</translation>
    </message>
    <message>
        <source>Carbon equivalent of EN 1011-2 method B</source>
        <translation>Kohlenstoffäquivalent der EN 1011-2 Methode B</translation>
    </message>
    <message>
        <source>Cracking parameter</source>
        <translation>Rissempfindlichkeit</translation>
    </message>
    <message>
        <source>Carbon equivalent with the accommodation factor A(C)</source>
        <translation>Kohlenstoffäquivalent mit dem Beiwert A(C)</translation>
    </message>
    <message>
        <source>Estimated maximum, worse of the two plates</source>
        <translation>Geschätzter Höchstwert, schlechteres der zwei Bleche</translation>
    </message>
    <message>
        <source>Welded length over travel speed</source>
        <translation>Geschweißte Länge durch Geschwindigkeit</translation>
    </message>
    <message>
        <source>Wire fed</source>
        <translation>Zugeführter Draht</translation>
    </message>
    <message>
        <source>Shielding gas, post-flow included</source>
        <translation>Schutzgas mit Nachströmen</translation>
    </message>
    <message>
        <source>Arc energy over the power source&apos;s efficiency</source>
        <translation>Lichtbogenenergie durch Wirkungsgrad der Stromquelle</translation>
    </message>
    <message>
        <source>Expanded uncertainty, k = 2</source>
        <translation>Erweiterte Unsicherheit, k = 2</translation>
    </message>
    <message>
        <source>Leg obtained from all passes, gap deducted</source>
        <translation>Schenkel aus allen Lagen, Spalt abgezogen</translation>
    </message>
    <message>
        <source>As drawn</source>
        <translation>Wie gezeichnet</translation>
    </message>
    <message>
        <source>Throat obtained</source>
        <translation>Erreichtes a-Maß</translation>
    </message>
    <message>
        <source>Cross-section that all passes lay</source>
        <translation>Querschnitt, den alle Lagen legen</translation>
    </message>
    <message>
        <source>With gap and allowance, or groove and cap</source>
        <translation>Mit Spalt und Zuschlag, oder Fuge und Überwölbung</translation>
    </message>
    <message>
        <source>Longest wait between passes at one place</source>
        <translation>Längste Pause zwischen Lagen an einer Stelle</translation>
    </message>
    <message>
        <source>Estimate for a fillet on a flange</source>
        <translation>Schätzung für eine Kehlnaht am Flansch</translation>
    </message>
    <message>
        <source>Sum over all passes</source>
        <translation>Summe über alle Lagen</translation>
    </message>
    <message>
        <source>Shielding gas</source>
        <translation>Schutzgas</translation>
    </message>
    <message>
        <source>At the power sources&apos; mains</source>
        <translation>Am Netz der Stromquellen</translation>
    </message>
    <message>
        <source>Wire, gas, energy, and robot or labour time of the arc</source>
        <translation>Draht, Gas, Energie und Roboter- oder Arbeitszeit des Lichtbogens</translation>
    </message>
    <message>
        <source>Of weld length</source>
        <translation>Von der Nahtlänge</translation>
    </message>
    <message>
        <source>Of deposited mass</source>
        <translation>Von der Auftragmasse</translation>
    </message>
    <message>
        <source>Of arc time</source>
        <translation>Von der Lichtbogenzeit</translation>
    </message>
    <message>
        <source>Longitudinal bow about the given neutral axis</source>
        <translation>Durchbiegung längs um die gegebene neutrale Achse</translation>
    </message>
    <message>
        <source>tee</source>
        <translation>T-Stoß</translation>
    </message>
    <message>
        <source>lap</source>
        <translation>Überlapp</translation>
    </message>
    <message>
        <source>dip</source>
        <translation>Kurzlichtbogen</translation>
    </message>
    <message>
        <source>The order of the robots&apos; passes, those of a seam apart where others cool meanwhile; absent: seams as they stand, each by the first robot of its list.</source>
        <translation>Die Reihenfolge der Lagen der Roboter, die einer Naht getrennt, wo andere inzwischen abkühlen; fehlt sie: Nähte, wie sie stehen, jede vom ersten Roboter ihrer Liste.</translation>
    </message>
    <message>
        <source>order</source>
        <translation>Reihenfolge</translation>
    </message>
    <message>
        <source>reversed</source>
        <translation>umgekehrt</translation>
    </message>
    <message>
        <source>Estimates only. The governing code, qualification by test and a responsible welding coordinator (ISO 14731) or certified welding engineer decide whether a procedure may be used. The cell&apos;s safeguards follow ISO 10218 and local law; a planned timeline is no proof that a robot&apos;s motion is safe.</source>
        <translation>Nur Schätzungen. Ob ein Schweißverfahren angewendet werden darf, entscheiden die geltende Norm, die Verfahrensprüfung und die verantwortliche Schweißaufsicht (ISO 14731) oder ein zertifizierter Schweißfachingenieur. Der Schutz der Zelle folgt ISO 10218 und örtlichem Recht; ein geplanter Zeitablauf beweist nicht, dass eine Roboterbewegung sicher ist.</translation>
    </message>
    <message>
        <source>Energy by method A, B or C of ISO/TR 18491</source>
        <translation>Energie nach Methode A, B oder C der ISO/TR 18491</translation>
    </message>
    <message>
        <source>Welded length over arc time</source>
        <translation>Geschweißte Länge durch Lichtbogenzeit</translation>
    </message>
    <message>
        <source>Travel speed</source>
        <translation>Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>Arc starts</source>
        <translation>Zündungen</translation>
    </message>
    <message>
        <source>U (k = 2)</source>
        <translation>U (k = 2)</translation>
    </message>
    <message>
        <source>Method</source>
        <translation>Methode</translation>
    </message>
    <message>
        <source>Arc on</source>
        <translation>Lichtbogen</translation>
    </message>
    <message>
        <source>Air moves</source>
        <translation>Eilgänge</translation>
    </message>
    <message>
        <source>Sensing</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>Arc starts and ends</source>
        <translation>Zünden und Krater</translation>
    </message>
    <message>
        <source>Waiting</source>
        <translation>Warten</translation>
    </message>
    <message>
        <source>Positioner</source>
        <translation>Positionierer</translation>
    </message>
    <message>
        <source>Torch service</source>
        <translation>Brennerpflege</translation>
    </message>
    <message>
        <source>Wire changes</source>
        <translation>Drahtwechsel</translation>
    </message>
    <message>
        <source>Load and unload</source>
        <translation>Laden und Entladen</translation>
    </message>
</context>
<context>
    <name>Explanation</name>
    <message>
        <source>read</source>
        <translation>gelesen</translation>
    </message>
    <message>
        <source>part read, part recalled</source>
        <translation>teils gelesen, teils aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>recalled: compare with your copy</source>
        <translation>aus dem Gedächtnis: mit der eigenen Ausgabe vergleichen</translation>
    </message>
    <message>
        <source>derived here</source>
        <translation>hier hergeleitet</translation>
    </message>
    <message>
        <source>common practice, no source</source>
        <translation>übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>thermal efficiency of process %1</source>
        <translation>thermischer Wirkungsgrad des Verfahrens %1</translation>
    </message>
    <message>
        <source>shape factor, joint %1</source>
        <translation>Nahtfaktor, %1</translation>
    </message>
    <message>
        <source>butt</source>
        <translation>Stumpfstoß</translation>
    </message>
    <message>
        <source>tee</source>
        <translation>T-Stoß</translation>
    </message>
    <message>
        <source>corner</source>
        <translation>Eckstoß</translation>
    </message>
    <message>
        <source>lap</source>
        <translation>Überlappstoß</translation>
    </message>
    <message>
        <source>cooling time t8/5 of plate %1</source>
        <translation>Abkühlzeit t8/5 von Blech %1</translation>
    </message>
    <message>
        <source>wire feed speed</source>
        <translation>Drahtvorschub</translation>
    </message>
    <message>
        <source>electrode extension: contact tip distance less arc length</source>
        <translation>freies Drahtende: Kontaktrohrabstand minus Lichtbogenlänge</translation>
    </message>
    <message>
        <source>of the wire</source>
        <translation>des Drahts</translation>
    </message>
    <message>
        <source>arc voltage</source>
        <translation>Lichtbogenspannung</translation>
    </message>
    <message>
        <source>current</source>
        <translation>Schweißstrom</translation>
    </message>
    <message>
        <source>waveform factor</source>
        <translation>Formfaktor</translation>
    </message>
    <message>
        <source>arc power</source>
        <translation>Lichtbogenleistung</translation>
    </message>
    <message>
        <source>travel speed</source>
        <translation>Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>arc energy</source>
        <translation>Streckenenergie</translation>
    </message>
    <message>
        <source>wire diameter</source>
        <translation>Drahtdurchmesser</translation>
    </message>
    <message>
        <source>density of the wire as fed</source>
        <translation>Dichte des zugeführten Drahts</translation>
    </message>
    <message>
        <source>deposition efficiency</source>
        <translation>Ausbringung</translation>
    </message>
    <message>
        <source>melting rate</source>
        <translation>Abschmelzleistung</translation>
    </message>
    <message>
        <source>deposition rate</source>
        <translation>Auftragleistung</translation>
    </message>
    <message>
        <source>density of the weld metal</source>
        <translation>Dichte des Schweißguts</translation>
    </message>
    <message>
        <source>preheat</source>
        <translation>Vorwärmtemperatur</translation>
    </message>
    <message>
        <source>heat input</source>
        <translation>Wärmeeinbringung</translation>
    </message>
    <message>
        <source>thinner plate</source>
        <translation>dünneres Blech</translation>
    </message>
    <message>
        <source>thicker plate</source>
        <translation>dickeres Blech</translation>
    </message>
    <message>
        <source>welded length</source>
        <translation>geschweißte Länge</translation>
    </message>
    <message>
        <source>arc time</source>
        <translation>Lichtbogenzeit</translation>
    </message>
    <message>
        <source>gas flow</source>
        <translation>Gasfluss</translation>
    </message>
    <message>
        <source>post-flow</source>
        <translation>Gasnachströmen</translation>
    </message>
    <message>
        <source>efficiency of the power source</source>
        <translation>Wirkungsgrad der Stromquelle</translation>
    </message>
    <message>
        <source>mass %</source>
        <translation>Massenanteil in %</translation>
    </message>
    <message>
        <source>mass %, not reported, taken as 0</source>
        <translation>Massenanteil in %, nicht angegeben, als 0 angenommen</translation>
    </message>
    <message>
        <source>higher one of the joined metals, or of the weld metal where given</source>
        <translation>höherer Wert der Grundwerkstoffe, oder des Schweißguts, wo es angegeben ist</translation>
    </message>
    <message>
        <source>%1, taken at the edge of the method&apos;s range</source>
        <translation>%1, am Rand des Bereichs der Methode angesetzt</translation>
    </message>
    <message>
        <source>by method B</source>
        <translation>nach Methode B</translation>
    </message>
    <message>
        <source>coldest plate</source>
        <translation>kältestes Blech</translation>
    </message>
    <message>
        <source>plates are welded dry and not below 5 C</source>
        <translation>Bleche werden trocken und nicht unter 5 °C geschweißt</translation>
    </message>
    <message>
        <source>diffusible hydrogen of the wire</source>
        <translation>diffusibler Wasserstoff des Drahts</translation>
    </message>
    <message>
        <source>martensite</source>
        <translation>Martensit</translation>
    </message>
    <message>
        <source>bainite</source>
        <translation>Bainit</translation>
    </message>
    <message>
        <source>all martensite up to</source>
        <translation>reiner Martensit bis</translation>
    </message>
    <message>
        <source>no martensite from</source>
        <translation>kein Martensit ab</translation>
    </message>
    <message>
        <source>coefficient of the inch form</source>
        <translation>Beiwert der Zollform</translation>
    </message>
    <message>
        <source>leg as drawn</source>
        <translation>Schenkel wie gezeichnet</translation>
    </message>
    <message>
        <source>leg obtained</source>
        <translation>erreichter Schenkel</translation>
    </message>
    <message>
        <source>gap</source>
        <translation>Spalt</translation>
    </message>
    <message>
        <source>dihedral</source>
        <translation>Öffnungswinkel</translation>
    </message>
    <message>
        <source>area allowance</source>
        <translation>Flächenzuschlag</translation>
    </message>
    <message>
        <source>area of all passes</source>
        <translation>Fläche aller Lagen</translation>
    </message>
    <message>
        <source>heat input of the pass before</source>
        <translation>Wärmeeinbringung der Lage davor</translation>
    </message>
    <message>
        <source>conductivity</source>
        <translation>Wärmeleitfähigkeit</translation>
    </message>
    <message>
        <source>volumetric heat capacity</source>
        <translation>volumenbezogene Wärmekapazität</translation>
    </message>
    <message>
        <source>upper interpass temperature</source>
        <translation>obere Zwischenlagentemperatur</translation>
    </message>
    <message>
        <source>plate</source>
        <translation>Blech</translation>
    </message>
    <message>
        <source>shape factor</source>
        <translation>Nahtfaktor</translation>
    </message>
    <message>
        <source>movement of the flange&apos;s edge</source>
        <translation>Weg der Flanschkante</translation>
    </message>
    <message>
        <source>flange width</source>
        <translation>Flanschbreite</translation>
    </message>
    <message>
        <source>one wire of circular section; rho of the wire as fed</source>
        <translation>ein Draht mit Kreisquerschnitt; rho des zugeführten Drahts</translation>
    </message>
    <message>
        <source>eta from 0 to 1</source>
        <translation>eta von 0 bis 1</translation>
    </message>
    <message>
        <source>rhow of the weld metal: 7.85 g/cm3 for steel</source>
        <translation>rhow des Schweißguts: 7.85 g/cm³ bei Stahl</translation>
    </message>
    <message>
        <source>steel; f_low and t_least by joint, runs and thickness of the test piece</source>
        <translation>Stahl; f_low und t_least nach Stoß, Lagenzahl und Dicke des Prüfstücks</translation>
    </message>
    <message>
        <source>steel; f_high by joint, runs and thickness of the test piece</source>
        <translation>Stahl; f_high nach Stoß, Lagenzahl und Dicke des Prüfstücks</translation>
    </message>
    <message>
        <source>single-run fillets; several runs have no limit</source>
        <translation>einlagige Kehlnähte; mehrlagige haben keine Grenze</translation>
    </message>
    <message>
        <source>where hardness was tested; arc energy likewise</source>
        <translation>wo die Härte geprüft wurde; für die Streckenenergie ebenso</translation>
    </message>
    <message>
        <source>where impact was tested; arc energy likewise</source>
        <translation>wo die Kerbschlagarbeit geprüft wurde; für die Streckenenergie ebenso</translation>
    </message>
    <message>
        <source>ferritic steels, arc welding, T0 below 450 degC, plate at or above the transition thickness</source>
        <translation>ferritische Stähle, Lichtbogenschweißen, T0 unter 450 °C, Blech ab der Übergangsblechdicke</translation>
    </message>
    <message>
        <source>ferritic steels, arc welding, T0 below 450 degC, plate below the transition thickness</source>
        <translation>ferritische Stähle, Lichtbogenschweißen, T0 unter 450 °C, Blech unter der Übergangsblechdicke</translation>
    </message>
    <message>
        <source>as the two formulas</source>
        <translation>wie die beiden Formeln</translation>
    </message>
    <message>
        <source>semi-infinite body, source on since t; G spreads across and down, F and R are the front and rear halves with [1 + erf] and [1 - erf]; conduction only, no melting</source>
        <translation>halbunendlicher Körper, Quelle seit t eingeschaltet; G breitet sich quer und in die Tiefe aus, F und R sind die vordere und die hintere Hälfte mit [1 + erf] und [1 - erf]; nur Wärmeleitung, kein Schmelzen</translation>
    </message>
    <message>
        <source>solid wire 0.76 to 1.6 mm; mild steel in Ar with O2, stainless in Ar with O2, aluminium in Ar; no clear transition above 15 % CO2</source>
        <translation>Massivdraht 0.76 bis 1.6 mm; unlegierter Stahl unter Ar mit O2, nichtrostender Stahl unter Ar mit O2, Aluminium unter Ar; über 15 % CO2 kein deutlicher Übergang</translation>
    </message>
    <message>
        <source>square edges</source>
        <translation>rechtwinklige Kanten</translation>
    </message>
    <message>
        <source>included angle alpha below 180 deg</source>
        <translation>Öffnungswinkel alpha unter 180°</translation>
    </message>
    <message>
        <source>symmetric, included angle alpha below 180 deg</source>
        <translation>symmetrisch, Öffnungswinkel alpha unter 180°</translation>
    </message>
    <message>
        <source>bevel angle beta below 90 deg</source>
        <translation>Flankenwinkel beta unter 90°</translation>
    </message>
    <message>
        <source>symmetric, bevel angle beta below 90 deg</source>
        <translation>symmetrisch, Flankenwinkel beta unter 90°</translation>
    </message>
    <message>
        <source>phi = 90 deg less the wall angle; s = t-c-r*(1-cos(phi)) not below 0, else the arc alone</source>
        <translation>phi = 90° minus Flankenwinkel; s = t-c-r*(1-cos(phi)) nicht unter 0, sonst nur der Bogen</translation>
    </message>
    <message>
        <source>n faces welded: two for double grooves</source>
        <translation>n geschweißte Seiten: zwei bei Doppelfugen</translation>
    </message>
    <message>
        <source>w the opening of the sloped walls at the surface</source>
        <translation>w die Öffnung der schrägen Flanken an der Oberfläche</translation>
    </message>
    <message>
        <source>plate thick against the heat; conduction only</source>
        <translation>Blech dick gegenüber der Wärme; nur Wärmeleitung</translation>
    </message>
    <message>
        <source>plate thin against the heat; conduction only</source>
        <translation>Blech dünn gegenüber der Wärme; nur Wärmeleitung</translation>
    </message>
    <message>
        <source>the speed v is reached: d at least v^2/2*(1/a1 + 1/a2)</source>
        <translation>die Geschwindigkeit v wird erreicht: d mindestens v^2/2*(1/a1 + 1/a2)</translation>
    </message>
    <message>
        <source>the speed isn&apos;t reached</source>
        <translation>die Geschwindigkeit wird nicht erreicht</translation>
    </message>
    <message>
        <source>any distance</source>
        <translation>jeder Weg</translation>
    </message>
    <message>
        <source>steel; the constant holds for mm only (0.02 in inches); one or two fillets on one side of a flange</source>
        <translation>Stahl; die Konstante gilt nur für mm (0.02 in Zoll); eine oder zwei Kehlnähte auf einer Seite eines Flansches</translation>
    </message>
    <message>
        <source>the halves of the flange stay flat</source>
        <translation>die Hälften des Flansches bleiben eben</translation>
    </message>
    <message>
        <source>steel; weld area with the plate melted in; welds along the whole length</source>
        <translation>Stahl; Nahtfläche mit aufgeschmolzenem Grundwerkstoff; Nähte über die ganze Länge</translation>
    </message>
    <message>
        <source>steel butt welds, unrestrained; recalled texts have 0.2*A_w/t + 0.05*gap</source>
        <translation>Stumpfnähte an Stahl, nicht eingespannt; Texte aus dem Gedächtnis haben 0.2*A_w/t + 0.05*Spalt</translation>
    </message>
    <message>
        <source>steel, while the force stays below yield stress times section area; Q is net</source>
        <translation>Stahl, solange die Kraft unter Streckgrenze mal Querschnittsfläche bleibt; Q ist netto</translation>
    </message>
    <message>
        <source>elastic, slender member, weld along its whole length</source>
        <translation>elastischer, schlanker Träger, Naht über seine ganze Länge</translation>
    </message>
    <message>
        <source>elastic, weld along its whole length</source>
        <translation>elastisch, Naht über die ganze Länge</translation>
    </message>
    <message>
        <source>bead on plate, mild steel, submerged arc; K 0.0010 to 0.0019 by flux and process</source>
        <translation>Blindraupe, unlegierter Stahl, Unterpulverschweißen; K 0.0010 bis 0.0019 je nach Pulver und Verfahren</translation>
    </message>
    <message>
        <source>guard band equal to the expanded uncertainty, k = 2</source>
        <translation>Sicherheitsabstand gleich der erweiterten Messunsicherheit, k = 2</translation>
    </message>
    <message>
        <source>normally distributed errors, no prior knowledge; a side without limit counts as infinitely far</source>
        <translation>normalverteilte Abweichungen, kein Vorwissen; eine Seite ohne Grenze gilt als unendlich weit</translation>
    </message>
    <message>
        <source>10 min period, 40 degC ambient</source>
        <translation>Spieldauer 10 min, Umgebung 40 °C</translation>
    </message>
    <message>
        <source>steel; T is the thinner plate with low hydrogen, else the thicker plate and a single pass</source>
        <translation>Stahl; T ist bei niedrigem Wasserstoff das dünnere Blech, sonst das dickere bei einer einzigen Lage</translation>
    </message>
    <message>
        <source>plates of 4 mm and more; national annexes may ask for more</source>
        <translation>Bleche ab 4 mm; nationale Anhänge können mehr verlangen</translation>
    </message>
    <message>
        <source>C up to 0.8 %, N up to 0.01 %; held between HB and HM</source>
        <translation>C bis 0.8 %, N bis 0.01 %; auf HB bis HM begrenzt</translation>
    </message>
    <message>
        <source>C up to 0.8 %</source>
        <translation>C bis 0.8 %</translation>
    </message>
    <message>
        <source>t8/5 2 to 20 s; L = log10(t8/5), A = Si/11 + Mn/8 + Cu/9 + Cr/5 + Ni/17 + Mo/6 + V/3; held between HB and HM</source>
        <translation>t8/5 2 bis 20 s; L = log10(t8/5), A = Si/11 + Mn/8 + Cu/9 + Cr/5 + Ni/17 + Mo/6 + V/3; auf HB bis HM begrenzt</translation>
    </message>
    <message>
        <source>all martensite</source>
        <translation>reiner Martensit</translation>
    </message>
    <message>
        <source>all bainite</source>
        <translation>reiner Bainit</translation>
    </message>
    <message>
        <source>unalloyed and low-alloy steels</source>
        <translation>unlegierte und niedriglegierte Stähle</translation>
    </message>
    <message>
        <source>C 0.05-0.32, Si to 0.8, Mn 0.5-1.9, Cr to 1.5, Cu to 0.7, Mo to 0.75, Nb to 0.06, Ni to 2.5, Ti to 0.12, V to 0.18, B to 0.005 %</source>
        <translation>C 0.05-0.32, Si bis 0.8, Mn 0.5-1.9, Cr bis 1.5, Cu bis 0.7, Mo bis 0.75, Nb bis 0.06, Ni bis 2.5, Ti bis 0.12, V bis 0.18, B bis 0.005 %</translation>
    </message>
    <message>
        <source>low-carbon and high-strength steels</source>
        <translation>kohlenstoffarme und hochfeste Stähle</translation>
    </message>
    <message>
        <source>C-Mn and low-alloy steels</source>
        <translation>C-Mn-Stähle und niedriglegierte Stähle</translation>
    </message>
    <message>
        <source>f_u of the weaker part; gamma_M2 = 1.25 unless a national annex differs</source>
        <translation>f_u des schwächeren Teils; gamma_M2 = 1.25, wenn kein nationaler Anhang abweicht</translation>
    </message>
    <message>
        <source>simplified method, any direction of force; effective length at least 30 mm and 6*a</source>
        <translation>vereinfachtes Verfahren, jede Kraftrichtung; wirksame Länge mindestens 30 mm und 6*a</translation>
    </message>
    <message>
        <source>effective length at least 30 mm and 6*a</source>
        <translation>wirksame Länge mindestens 30 mm und 6*a</translation>
    </message>
    <message>
        <source>plates at right angles: s = tp = N/(a*L*n*sqrt(2)), tl = V/(a*L*n)</source>
        <translation>rechtwinklige Bleche: s = tp = N/(a*L*n*sqrt(2)), tl = V/(a*L*n)</translation>
    </message>
    <message>
        <source>any</source>
        <translation>uneingeschränkt</translation>
    </message>
    <message>
        <source>arithmetic means; power source without waveform control</source>
        <translation>arithmetische Mittelwerte; Stromquelle ohne geregelte Wellenform</translation>
    </message>
    <message>
        <source>steady travel; P the mean power near the arc</source>
        <translation>gleichmäßige Schweißgeschwindigkeit; P ist die mittlere Leistung nahe am Lichtbogen</translation>
    </message>
    <message>
        <source>any waveform; W the energy of the whole weld</source>
        <translation>jede Wellenform; W ist die Energie der ganzen Naht</translation>
    </message>
    <message>
        <source>as arc energy; no efficiency factor in this form</source>
        <translation>wie die Streckenenergie; in dieser Form ohne Wirkungsgrad</translation>
    </message>
    <message>
        <source>arc processes; k by ISO 4063 process number, or given</source>
        <translation>Lichtbogenverfahren; k nach der Verfahrensnummer von ISO 4063 oder gegeben</translation>
    </message>
    <message>
        <source>samples closer than the signal&apos;s changes</source>
        <translation>Abtastung dichter als die Änderungen des Signals</translation>
    </message>
    <message>
        <source>any waveform</source>
        <translation>jede Wellenform</translation>
    </message>
    <message>
        <source>only without waveform control: it misses the covariance of U and I</source>
        <translation>nur ohne geregelte Wellenform: Die Kovarianz von U und I fehlt darin</translation>
    </message>
    <message>
        <source>CET 0.2-0.5 %, d 10-90 mm (thicker plate), HD 1-20 ml/100 g, Q 0.5-4.0 kJ/mm, yield to 1000 MPa</source>
        <translation>CET 0.2-0.5 %, d 10-90 mm (dickeres Blech), HD 1-20 ml/100 g, Q 0.5-4.0 kJ/mm, Streckgrenze bis 1000 MPa</translation>
    </message>
    <message>
        <source>CETw: weld metal, where given</source>
        <translation>CETw: Schweißgut, wo gegeben</translation>
    </message>
    <message>
        <source>groups A to G up to 7.0</source>
        <translation>Gruppen A bis G bis 7.0</translation>
    </message>
    <message>
        <source>groups A to G, three restraint levels, any thickness</source>
        <translation>Gruppen A bis G, drei Einspanngrade, jede Dicke</translation>
    </message>
    <message>
        <source>outside the weld pool; R = sqrt(x^2 + y^2 + z^2), a = lambda/rho_c</source>
        <translation>außerhalb des Schmelzbads; R = sqrt(x^2 + y^2 + z^2), a = lambda/rho_c</translation>
    </message>
    <message>
        <source>outside the weld pool; r = sqrt(x^2 + y^2), a = lambda/rho_c; no heat lost at the faces</source>
        <translation>außerhalb des Schmelzbads; r = sqrt(x^2 + y^2), a = lambda/rho_c; keine Wärmeabgabe an den Oberflächen</translation>
    </message>
    <message>
        <source>outside the weld pool; R_i = sqrt(x^2 + y^2 + (z - 2*i*d)^2), all whole i; no heat lost at the faces</source>
        <translation>außerhalb des Schmelzbads; R_i = sqrt(x^2 + y^2 + (z - 2*i*d)^2), alle ganzen i; keine Wärmeabgabe an den Oberflächen</translation>
    </message>
    <message>
        <source>thin plate, T0 &lt; Tp &lt;= Tm, fast travel; Y from the fusion line</source>
        <translation>dünnes Blech, T0 &lt; Tp &lt;= Tm, hohe Schweißgeschwindigkeit; Y ab der Schmelzlinie</translation>
    </message>
    <message>
        <source>thin plate, fast travel; Y from the fusion line</source>
        <translation>dünnes Blech, hohe Schweißgeschwindigkeit; Y ab der Schmelzlinie</translation>
    </message>
    <message>
        <source>thick plate, T0 &lt; Tp &lt;= Tm, fast travel; Y from the fusion line</source>
        <translation>dickes Blech, T0 &lt; Tp &lt;= Tm, hohe Schweißgeschwindigkeit; Y ab der Schmelzlinie</translation>
    </message>
    <message>
        <source>thick plate, fast travel; r_m = sqrt(2*Q*1000/(pi*e*rho_c*(Tm - T0))), Y from the fusion line</source>
        <translation>dickes Blech, hohe Schweißgeschwindigkeit; r_m = sqrt(2*Q*1000/(pi*e*rho_c*(Tm - T0))), Y ab der Schmelzlinie</translation>
    </message>
    <message>
        <source>flat face, As = 0; else a circular segment</source>
        <translation>ebene Nahtoberfläche, As = 0; sonst ein Kreisabschnitt</translation>
    </message>
    <message>
        <source>0 &lt; psi &lt; 180 deg; the shorter leg where the perpendicular falls outside the face</source>
        <translation>0 &lt; psi &lt; 180°; der kürzere Schenkel, wo das Lot neben die Nahtoberfläche fällt</translation>
    </message>
    <message>
        <source>equal legs</source>
        <translation>gleiche Schenkel</translation>
    </message>
    <message>
        <source>equal legs; As the face&apos;s segment, itself a function of z</source>
        <translation>gleiche Schenkel; As ist der Abschnitt der Nahtoberfläche, selbst eine Funktion von z</translation>
    </message>
    <message>
        <source>gap g deducted whatever its size, concavity h deducted, convexity not counted</source>
        <translation>Spalt g immer abgezogen, auch der kleinste; Hohlwölbung h abgezogen, Überwölbung nicht angerechnet</translation>
    </message>
    <message>
        <source>60 to 135 deg</source>
        <translation>60 bis 135°</translation>
    </message>
    <message>
        <source>solid wire, electrode positive, steady current; wire 0.8 to 1.6 mm, extension 5 to 35 mm, 50 to 500 A</source>
        <translation>Massivdraht, Elektrode am Pluspol, gleichmäßiger Strom; Draht 0.8 bis 1.6 mm, freies Drahtende 5 bis 35 mm, 50 bis 500 A</translation>
    </message>
    <message>
        <source>solid wire, any waveform whose rms current is known</source>
        <translation>Massivdraht, jede Wellenform mit bekanntem Effektivstrom</translation>
    </message>
    <message>
        <source>as the melting law, of which it is the inverse</source>
        <translation>wie das Abschmelzgesetz, dessen Umkehrung sie ist</translation>
    </message>
    <message>
        <source>solid wire 0.8 to 1.6 mm</source>
        <translation>Massivdraht 0.8 bis 1.6 mm</translation>
    </message>
    <message>
        <source>2 mm and more; a range&apos;s upper bound belongs to it</source>
        <translation>ab 2 mm; die obere Grenze eines Bereichs gehört dazu</translation>
    </message>
    <message>
        <source>length of the shorter leg</source>
        <translation>Länge des kürzeren Schenkels</translation>
    </message>
    <message>
        <source>at the end of the shorter leg; t is the table&apos;s rounded mm/m</source>
        <translation>am Ende des kürzeren Schenkels; t ist der gerundete Wert der Tabelle in mm/m</translation>
    </message>
    <message>
        <source>above 30 mm; classes G and H recalled</source>
        <translation>über 30 mm; Klassen G und H aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>f = mean(U*I)/(mean U * mean I), 1 for a source without waveform control</source>
        <translation>f = Mittel(U*I)/(Mittel U * Mittel I), 1 bei einer Stromquelle ohne geregelte Wellenform</translation>
    </message>
    <message>
        <source>steady travel</source>
        <translation>gleichmäßige Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>one wire</source>
        <translation>ein Draht</translation>
    </message>
    <message>
        <source>flow as set</source>
        <translation>Gasfluss wie eingestellt</translation>
    </message>
    <message>
        <source>idle losses left out</source>
        <translation>ohne Leerlaufverluste</translation>
    </message>
    <message>
        <source>equal legs, flat face; q is the area allowance</source>
        <translation>gleiche Schenkel, ebene Nahtoberfläche; q ist der Flächenzuschlag</translation>
    </message>
    <message>
        <source>equal legs, flat face</source>
        <translation>gleiche Schenkel, ebene Nahtoberfläche</translation>
    </message>
    <message>
        <source>fusion-welded fillets, 0.5 mm and thicker; the row of the level</source>
        <translation>schmelzgeschweißte Kehlnähte, Dicke ab 0.5 mm; die Zeile der Bewertungsgruppe</translation>
    </message>
    <message>
        <source>not stated by the source</source>
        <translation>von der Quelle nicht angegeben</translation>
    </message>
    <message>
        <source>not stated by the source; +-10 to 20 % (common practice)</source>
        <translation>von der Quelle nicht angegeben; ±10 bis 20 % (übliche Praxis)</translation>
    </message>
    <message>
        <source>not stated by the source; a longer extension lowers it</source>
        <translation>von der Quelle nicht angegeben; ein längeres freies Drahtende senkt ihn</translation>
    </message>
    <message>
        <source>not stated by the source; constant properties, conduction only</source>
        <translation>von der Quelle nicht angegeben; feste Stoffwerte, nur Wärmeleitung</translation>
    </message>
    <message>
        <source>quadrature 1e-6; the physics is not stated by the source</source>
        <translation>Quadratur 1e-6; zur Physik gibt die Quelle nichts an</translation>
    </message>
    <message>
        <source>+-15 % with tabulated coefficients (common practice); calibrate</source>
        <translation>±15 % mit tabellierten Beiwerten (übliche Praxis); kalibrieren</translation>
    </message>
    <message>
        <source>+-30 % (common practice)</source>
        <translation>±30 % (übliche Praxis)</translation>
    </message>
    <message>
        <source>+-56 HV (two standard deviations of the best of twelve methods over 300 welds)</source>
        <translation>±56 HV (zwei Standardabweichungen des besten von zwölf Verfahren an 300 Schweißungen)</translation>
    </message>
    <message>
        <source>a factor of 1.5 to 2 either way (common practice, no source)</source>
        <translation>Faktor 1.5 bis 2 nach oben und unten (übliche Praxis, ohne Quelle)</translation>
    </message>
    <message>
        <source>a rule, no scatter</source>
        <translation>eine Regel, ohne Streuung</translation>
    </message>
    <message>
        <source>an estimate; makers&apos; own ratings can lie below it</source>
        <translation>eine Schätzung; die Angaben der Hersteller können darunter liegen</translation>
    </message>
    <message>
        <source>as alpha</source>
        <translation>wie alpha</translation>
    </message>
    <message>
        <source>as the melting law</source>
        <translation>wie das Abschmelzgesetz</translation>
    </message>
    <message>
        <source>exact</source>
        <translation>exakt</translation>
    </message>
    <message>
        <source>exact for its assumptions</source>
        <translation>exakt unter den Annahmen</translation>
    </message>
    <message>
        <source>exact for its definition</source>
        <translation>exakt nach der Definition</translation>
    </message>
    <message>
        <source>exact for piecewise linear signals</source>
        <translation>exakt für stückweise lineare Signale</translation>
    </message>
    <message>
        <source>exact for the analysis</source>
        <translation>exakt für die Analyse</translation>
    </message>
    <message>
        <source>exact for the drawing</source>
        <translation>exakt für die Zeichnung</translation>
    </message>
    <message>
        <source>k is a convention and carries no uncertainty</source>
        <translation>k ist eine Vereinbarung und trägt keine Unsicherheit</translation>
    </message>
    <message>
        <source>that of diameter and density</source>
        <translation>die von Durchmesser und Dichte</translation>
    </message>
    <message>
        <source>that of the arc energy</source>
        <translation>die der Streckenenergie</translation>
    </message>
    <message>
        <source>that of the deposition rate and the travel speed</source>
        <translation>die von Auftragleistung und Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>that of the efficiency</source>
        <translation>die des Wirkungsgrads</translation>
    </message>
    <message>
        <source>that of the flow</source>
        <translation>die des Gasflusses</translation>
    </message>
    <message>
        <source>that of the leg</source>
        <translation>die des Schenkels</translation>
    </message>
    <message>
        <source>that of the measured energy and length</source>
        <translation>die von gemessener Energie und Länge</translation>
    </message>
    <message>
        <source>that of the measured power and speed</source>
        <translation>die von gemessener Leistung und Geschwindigkeit</translation>
    </message>
    <message>
        <source>that of the measured voltage and current</source>
        <translation>die von gemessener Spannung und gemessenem Strom</translation>
    </message>
    <message>
        <source>that of the melting rate</source>
        <translation>die der Abschmelzleistung</translation>
    </message>
    <message>
        <source>that of the samples</source>
        <translation>die der Messwerte</translation>
    </message>
    <message>
        <source>that of the travel speed</source>
        <translation>die der Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>that of voltage, current and f</source>
        <translation>die von Spannung, Strom und f</translation>
    </message>
    <message>
        <source>that of wire feed, efficiency and travel speed</source>
        <translation>die von Drahtvorschub, Ausbringung und Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>the table&apos;s steps</source>
        <translation>die Stufen der Tabelle</translation>
    </message>
    <message>
        <source>within +-15 % of a power-source maker&apos;s rules at 10 mm extension but for +18 % at 0.8 mm</source>
        <translation>bei 10 mm freiem Drahtende innerhalb ±15 % der Regeln eines Stromquellenherstellers, nur bei 0.8 mm +18 %</translation>
    </message>
    <message>
        <source>within 2 % of a circular cap for h/b up to 0.12</source>
        <translation>innerhalb 2 % einer Kreisbogen-Überhöhung für h/b bis 0.12</translation>
    </message>
    <message>
        <source>4.2.2, page 8</source>
        <translation>4.2.2, Seite 8</translation>
    </message>
    <message>
        <source>Annex D, three-dimensional heat flow</source>
        <translation>Anhang D, dreidimensionale Wärmeableitung</translation>
    </message>
    <message>
        <source>Annex D, two-dimensional heat flow</source>
        <translation>Anhang D, zweidimensionale Wärmeableitung</translation>
    </message>
    <message>
        <source>C.3, equation C.8</source>
        <translation>C.3, Gleichung C.8</translation>
    </message>
    <message>
        <source>Table 1</source>
        <translation>Tabelle 1</translation>
    </message>
    <message>
        <source>Table 1, 5011 and 5012</source>
        <translation>Tabelle 1, 5011 und 5012</translation>
    </message>
    <message>
        <source>Table 1, 503</source>
        <translation>Tabelle 1, 503</translation>
    </message>
    <message>
        <source>Table 1, 512</source>
        <translation>Tabelle 1, 512</translation>
    </message>
    <message>
        <source>Table 1, 5213</source>
        <translation>Tabelle 1, 5213</translation>
    </message>
    <message>
        <source>Table 1, 5214</source>
        <translation>Tabelle 1, 5214</translation>
    </message>
    <message>
        <source>Table 1, 617</source>
        <translation>Tabelle 1, 617</translation>
    </message>
    <message>
        <source>Table 1-2</source>
        <translation>Tabelle 1-2</translation>
    </message>
    <message>
        <source>annex on skewed T-joints, 60 to 135 deg</source>
        <translation>Anhang zu schrägen T-Stößen, 60 bis 135°</translation>
    </message>
    <message>
        <source>arc energy over the power source&apos;s efficiency</source>
        <translation>Lichtbogenenergie durch den Wirkungsgrad der Stromquelle</translation>
    </message>
    <message>
        <source>bar under end force</source>
        <translation>Stab unter Endkraft</translation>
    </message>
    <message>
        <source>beam under end moments</source>
        <translation>Balken unter Endmomenten</translation>
    </message>
    <message>
        <source>butt welds</source>
        <translation>Stumpfnähte</translation>
    </message>
    <message>
        <source>centre line, thick plate</source>
        <translation>Nahtmitte, dickes Blech</translation>
    </message>
    <message>
        <source>centre line, thin plate</source>
        <translation>Nahtmitte, dünnes Blech</translation>
    </message>
    <message>
        <source>chapter 1, medium thick plate</source>
        <translation>Kapitel 1, mitteldickes Blech</translation>
    </message>
    <message>
        <source>corrected form of the double-ellipsoidal solution; source density goldak-1984</source>
        <translation>berichtigte Form der Lösung für das Doppelellipsoid; Quelldichte goldak-1984</translation>
    </message>
    <message>
        <source>definition</source>
        <translation>Definition</translation>
    </message>
    <message>
        <source>distortion, angular distortion of flanges</source>
        <translation>Verzug, Winkelverzug von Flanschen</translation>
    </message>
    <message>
        <source>distortion, longitudinal bending</source>
        <translation>Verzug, Längsbiegung</translation>
    </message>
    <message>
        <source>duty-cycle page</source>
        <translation>Seite zur Einschaltdauer</translation>
    </message>
    <message>
        <source>equal cooling times</source>
        <translation>gleiche Abkühlzeiten</translation>
    </message>
    <message>
        <source>fit-up of fillet welds</source>
        <translation>Passung von Kehlnähten</translation>
    </message>
    <message>
        <source>flow over arc and post-flow time</source>
        <translation>Gasfluss über Lichtbogen- und Nachströmzeit</translation>
    </message>
    <message>
        <source>geometry</source>
        <translation>Geometrie</translation>
    </message>
    <message>
        <source>hydrogen control, index</source>
        <translation>Wasserstoffkontrolle, Kennzahl</translation>
    </message>
    <message>
        <source>hydrogen control, minimum preheat</source>
        <translation>Wasserstoffkontrolle, Mindestvorwärmung</translation>
    </message>
    <message>
        <source>integral of the product of two linear functions; for iso-tr-18491 method B</source>
        <translation>Integral des Produkts zweier linearer Funktionen; für iso-tr-18491, Verfahren B</translation>
    </message>
    <message>
        <source>integral of the square of a linear function</source>
        <translation>Integral des Quadrats einer linearen Funktion</translation>
    </message>
    <message>
        <source>inverse of the mean melting law</source>
        <translation>Umkehrung des gemittelten Abschmelzgesetzes</translation>
    </message>
    <message>
        <source>inverse of the melting law</source>
        <translation>Umkehrung des Abschmelzgesetzes</translation>
    </message>
    <message>
        <source>inverse; t2 and t3 at 1 kJ/mm</source>
        <translation>Umkehrung; t2 und t3 bei 1 kJ/mm</translation>
    </message>
    <message>
        <source>level 2, 8.4.7</source>
        <translation>Stufe 2, 8.4.7</translation>
    </message>
    <message>
        <source>level 2, Table 8</source>
        <translation>Stufe 2, Tabelle 8</translation>
    </message>
    <message>
        <source>level 2, Tables 7 and 8</source>
        <translation>Stufe 2, Tabellen 7 und 8</translation>
    </message>
    <message>
        <source>mass balance</source>
        <translation>Massenbilanz</translation>
    </message>
    <message>
        <source>mean of the melting law over the waveform</source>
        <translation>Mittel des Abschmelzgesetzes über die Wellenform</translation>
    </message>
    <message>
        <source>melting rate times arc time</source>
        <translation>Abschmelzleistung mal Lichtbogenzeit</translation>
    </message>
    <message>
        <source>method A</source>
        <translation>Verfahren A</translation>
    </message>
    <message>
        <source>method A, times the waveform factor</source>
        <translation>Verfahren A, mal Formfaktor</translation>
    </message>
    <message>
        <source>method B</source>
        <translation>Verfahren B</translation>
    </message>
    <message>
        <source>method C</source>
        <translation>Verfahren C</translation>
    </message>
    <message>
        <source>methods A and C</source>
        <translation>Verfahren A und C</translation>
    </message>
    <message>
        <source>minimum fillet weld size, Table 5.7 of the 2015 edition</source>
        <translation>Mindestmaß der Kehlnaht, Tabelle 5.7 der Ausgabe 2015</translation>
    </message>
    <message>
        <source>page 217R</source>
        <translation>Seite 217R</translation>
    </message>
    <message>
        <source>parabola</source>
        <translation>Parabel</translation>
    </message>
    <message>
        <source>peak temperature, fast source on a thick plate</source>
        <translation>Spitzentemperatur, schnelle Quelle auf dickem Blech</translation>
    </message>
    <message>
        <source>peak temperature, thin plate</source>
        <translation>Spitzentemperatur, dünnes Blech</translation>
    </message>
    <message>
        <source>scaled from the 1.2 mm wire</source>
        <translation>umgerechnet vom Draht mit 1.2 mm</translation>
    </message>
    <message>
        <source>table of angular dimensions</source>
        <translation>Tabelle der Winkelmaße</translation>
    </message>
    <message>
        <source>table of linear dimensions</source>
        <translation>Tabelle der Längenmaße</translation>
    </message>
    <message>
        <source>table of straightness, flatness and parallelism</source>
        <translation>Tabelle für Geradheit, Ebenheit und Parallelität</translation>
    </message>
    <message>
        <source>the two formulas meet at the transition thickness</source>
        <translation>bei der Übergangsblechdicke treffen sich die beiden Formeln</translation>
    </message>
    <message>
        <source>thick plate</source>
        <translation>dickes Blech</translation>
    </message>
    <message>
        <source>thin plate</source>
        <translation>dünnes Blech</translation>
    </message>
    <message>
        <source>triangle of the area laid, gap deducted</source>
        <translation>Dreieck der gelegten Fläche, Spalt abgezogen</translation>
    </message>
    <message>
        <source>triangle over the gap, with allowance</source>
        <translation>Dreieck über dem Spalt, mit Zuschlag</translation>
    </message>
    <message>
        <source>uniform acceleration</source>
        <translation>gleichmäßige Beschleunigung</translation>
    </message>
    <message>
        <source>welded length over travel speed</source>
        <translation>geschweißte Länge durch Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>Acceptance interval</source>
        <translation>Annahmebereich</translation>
    </message>
    <message>
        <source>Arc coefficient alpha</source>
        <translation>Lichtbogenbeiwert alpha</translation>
    </message>
    <message>
        <source>Arc energy per inch</source>
        <translation>Streckenenergie je Zoll</translation>
    </message>
    <message>
        <source>Arc power</source>
        <translation>Lichtbogenleistung</translation>
    </message>
    <message>
        <source>Hardness of bainite</source>
        <translation>Härte des Bainits</translation>
    </message>
    <message>
        <source>Resistance coefficient beta</source>
        <translation>Widerstandsbeiwert beta</translation>
    </message>
    <message>
        <source>Longitudinal bow</source>
        <translation>Längskrümmung</translation>
    </message>
    <message>
        <source>Cap area</source>
        <translation>Fläche der Nahtüberhöhung</translation>
    </message>
    <message>
        <source>CET of the plate or the weld metal</source>
        <translation>CET von Blech oder Schweißgut</translation>
    </message>
    <message>
        <source>Cooling time, two-dimensional heat flow</source>
        <translation>Abkühlzeit t8/5, zweidimensionale Wärmeableitung</translation>
    </message>
    <message>
        <source>Cooling time, three-dimensional heat flow</source>
        <translation>Abkühlzeit t8/5, dreidimensionale Wärmeableitung</translation>
    </message>
    <message>
        <source>Design shear strength of the weld</source>
        <translation>Bemessungswert der Scherfestigkeit der Naht</translation>
    </message>
    <message>
        <source>Distance from the fusion line</source>
        <translation>Abstand von der Schmelzlinie</translation>
    </message>
    <message>
        <source>Duty cycle</source>
        <translation>Einschaltdauer</translation>
    </message>
    <message>
        <source>Effective throat</source>
        <translation>Wirksame Nahtdicke</translation>
    </message>
    <message>
        <source>Energy of the record</source>
        <translation>Energie der Aufzeichnung</translation>
    </message>
    <message>
        <source>Tendon force</source>
        <translation>Schrumpfkraft</translation>
    </message>
    <message>
        <source>Groove area</source>
        <translation>Fugenfläche</translation>
    </message>
    <message>
        <source>Hardness of the heat-affected zone</source>
        <translation>Härte der Wärmeeinflusszone</translation>
    </message>
    <message>
        <source>Least leg</source>
        <translation>Mindestschenkel</translation>
    </message>
    <message>
        <source>Limit of convexity</source>
        <translation>Grenze für die Nahtüberhöhung</translation>
    </message>
    <message>
        <source>Limit of excess throat</source>
        <translation>Grenze für zu große Kehlnahtdicke</translation>
    </message>
    <message>
        <source>Limit of the root gap</source>
        <translation>Grenze für den Stegabstand</translation>
    </message>
    <message>
        <source>Limit of undercut</source>
        <translation>Grenze für Einbrandkerben</translation>
    </message>
    <message>
        <source>Limit of undersize throat</source>
        <translation>Grenze für zu kleine Kehlnahtdicke</translation>
    </message>
    <message>
        <source>Limit of unequal legs</source>
        <translation>Grenze für die Ungleichschenkligkeit</translation>
    </message>
    <message>
        <source>Hardness of martensite</source>
        <translation>Härte des Martensits</translation>
    </message>
    <message>
        <source>Mean power</source>
        <translation>Mittlere Leistung</translation>
    </message>
    <message>
        <source>Movement by distortion</source>
        <translation>Weg durch Verzug</translation>
    </message>
    <message>
        <source>Peak temperature</source>
        <translation>Spitzentemperatur</translation>
    </message>
    <message>
        <source>Preheat needed</source>
        <translation>Nötige Vorwärmtemperatur</translation>
    </message>
    <message>
        <source>Probability of conformity</source>
        <translation>Konformitätswahrscheinlichkeit</translation>
    </message>
    <message>
        <source>Product of the means</source>
        <translation>Produkt der Mittelwerte</translation>
    </message>
    <message>
        <source>Speed reached</source>
        <translation>Erreichte Geschwindigkeit</translation>
    </message>
    <message>
        <source>Resistance of the weld</source>
        <translation>Tragfähigkeit der Naht</translation>
    </message>
    <message>
        <source>Effective current</source>
        <translation>Effektivstrom</translation>
    </message>
    <message>
        <source>Shortening</source>
        <translation>Verkürzung</translation>
    </message>
    <message>
        <source>Factor for skewed joints</source>
        <translation>Faktor für schräge Stöße</translation>
    </message>
    <message>
        <source>Susceptibility index</source>
        <translation>Kennzahl der Rissempfindlichkeit</translation>
    </message>
    <message>
        <source>Takt</source>
        <translation>Takt</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>Qualified thickness</source>
        <translation>Qualifizierte Dicke</translation>
    </message>
    <message>
        <source>Least throat</source>
        <translation>Mindest-a-Maß</translation>
    </message>
    <message>
        <source>Time of the move</source>
        <translation>Zeit der Bewegung</translation>
    </message>
    <message>
        <source>Tolerance of the angle</source>
        <translation>Winkeltoleranz</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Toleranz</translation>
    </message>
    <message>
        <source>Width of the groove at the top</source>
        <translation>Obere Fugenbreite</translation>
    </message>
    <message>
        <source>Transition current</source>
        <translation>Übergangsstrom</translation>
    </message>
    <message>
        <source>Transition thickness</source>
        <translation>Übergangsblechdicke</translation>
    </message>
    <message>
        <source>Units an hour</source>
        <translation>Einheiten je Stunde</translation>
    </message>
    <message>
        <source>Utilisation, directional method</source>
        <translation>Ausnutzung, richtungsbezogenes Verfahren</translation>
    </message>
    <message>
        <source>Utilisation, simplified method</source>
        <translation>Ausnutzung, vereinfachtes Verfahren</translation>
    </message>
    <message>
        <source>Interpass wait</source>
        <translation>Zwischenlagenpause</translation>
    </message>
    <message>
        <source>Wire feed speed</source>
        <translation>Drahtvorschub</translation>
    </message>
</context>
<context>
    <name>Finding</name>
    <message>
        <source>%1 is %2, below the lower limit of %3.</source>
        <translation>%1 ist %2, unter der unteren Grenze von %3.</translation>
    </message>
    <message>
        <source>%1 is %2, above the upper limit of %3.</source>
        <translation>%1 ist %2, über der oberen Grenze von %3.</translation>
    </message>
    <message>
        <source>%1 is %2, within its uncertainty of the lower limit of %3.</source>
        <translation>%1 ist %2, innerhalb ihrer Unsicherheit an der unteren Grenze von %3.</translation>
    </message>
    <message>
        <source>%1 is %2, within its uncertainty of the upper limit of %3.</source>
        <translation>%1 ist %2, innerhalb ihrer Unsicherheit an der oberen Grenze von %3.</translation>
    </message>
    <message>
        <source>%1 is %2 of %3 mm that the drawing asks for.</source>
        <translation>%1: %2 von %3 mm, die die Zeichnung verlangt.</translation>
    </message>
    <message>
        <source>%1 of %2 mm is within its uncertainty of the %3 mm that the drawing asks for.</source>
        <translation>%1 von %2 mm liegt innerhalb ihrer Unsicherheit an den %3 mm der Zeichnung.</translation>
    </message>
    <message>
        <source>The drawing&apos;s leg of %1 mm is below the code&apos;s minimum of %2 mm for these plates.</source>
        <translation>Der gezeichnete Schenkel von %1 mm ist kleiner als das Mindestmaß von %2 mm für diese Bleche.</translation>
    </message>
    <message>
        <source>The drawing&apos;s throat of %1 mm is below 3 mm.</source>
        <translation>Das gezeichnete a-Maß von %1 mm ist kleiner als 3 mm.</translation>
    </message>
    <message>
        <source>Fillet throat of %1 mm: quality level %2 allows at most %3 mm over the %4 mm that the drawing asks for.</source>
        <translation>Kehlnahtdicke von %1 mm: Die Bewertungsgruppe %2 erlaubt höchstens %3 mm über den %4 mm, die die Zeichnung verlangt.</translation>
    </message>
    <message>
        <source>All passes together lay %1 of %2 mm2 that groove and cap need.</source>
        <translation>Alle Lagen zusammen legen %1 von %2 mm², die Fuge und Decklage brauchen.</translation>
    </message>
    <message>
        <source>A run of %1 mm is shorter than the %2 mm (30 mm or 6 throats) from which a fillet is taken to carry load.</source>
        <translation>Ein Nahtstück von %1 mm ist kürzer als die %2 mm (30 mm oder 6 a-Maße), ab denen eine Kehlnaht als tragend gilt.</translation>
    </message>
    <message>
        <source>Schedule %1 revision %2 is %3, and seams use it.</source>
        <translation>Schweißplan %1, Revision %2, ist %3, und Nähte verwenden ihn.</translation>
    </message>
    <message>
        <source>Qualification %1 is dated %2, after %3.</source>
        <translation>Qualifizierung %1 trägt das Datum %2, nach dem %3.</translation>
    </message>
    <message>
        <source>Qualification %1 was last used on %2, after %3.</source>
        <translation>Qualifizierung %1 wurde zuletzt am %2 verwendet, nach dem %3.</translation>
    </message>
    <message>
        <source>The composition of %1 is %2: carbon equivalents, preheat and hardness from it may lie far from the delivered plate&apos;s.</source>
        <translation>Die Zusammensetzung von %1 ist %2: Kohlenstoffäquivalente, Vorwärmung und Härte daraus können weit von denen des gelieferten Blechs abweichen.</translation>
    </message>
    <message>
        <source>Current of %1 A is above the %2 A that %3 is rated for.</source>
        <translation>Der Strom von %1 A liegt über den %2 A, für die %3 bemessen ist.</translation>
    </message>
    <message>
        <source>One arc of %1 s at %2 A is longer than the %3 s that the duty cycle of %4 allows in 10 min.</source>
        <translation>Ein Lichtbogen von %1 s bei %2 A ist länger als die %3 s, die die Einschaltdauer von %4 in 10 min erlaubt.</translation>
    </message>
    <message>
        <source>Preheat is %1 C, method B asks for %2 C.</source>
        <translation>Die Vorwärmung ist %1 °C, Methode B verlangt %2 °C.</translation>
    </message>
    <message>
        <source>Preheat is %1 C, method B asks for %2 C. The composition is the standard&apos;s maximum: the delivered plate will need less.</source>
        <translation>Die Vorwärmung ist %1 °C, Methode B verlangt %2 °C. Die Zusammensetzung ist das Höchstmaß der Norm: Das gelieferte Blech wird weniger brauchen.</translation>
    </message>
    <message>
        <source>Preheat is %1 C, method B asks for %2 C at the edge of its range.</source>
        <translation>Die Vorwärmung ist %1 °C, Methode B verlangt am Rand ihres Bereichs %2 °C.</translation>
    </message>
    <message>
        <source>Preheat is %1 C, method B asks for %2 C at the edge of its range. The composition is the standard&apos;s maximum: the delivered plate will need less.</source>
        <translation>Die Vorwärmung ist %1 °C, Methode B verlangt am Rand ihres Bereichs %2 °C. Die Zusammensetzung ist das Höchstmaß der Norm: Das gelieferte Blech wird weniger brauchen.</translation>
    </message>
    <message>
        <source>Preheat of %1 passes is judged at the edge of method B&apos;s range (%2): that asks for no less than they need.</source>
        <translation>Die Vorwärmung von %1 Lagen wird am Rand des Bereichs der Methode B beurteilt (%2): Der verlangt nicht weniger, als sie brauchen.</translation>
    </message>
    <message>
        <source>Preheat isn&apos;t judged on %1 passes with schedule %2: %3, method B begins at %4.</source>
        <translation>Auf %1 Lagen mit dem Schweißplan %2 wird die Vorwärmung nicht beurteilt: %3, Methode B beginnt bei %4.</translation>
    </message>
    <message>
        <source>Preheat isn&apos;t judged on %1 passes with schedule %2: %3, method B ends at %4.</source>
        <translation>Auf %1 Lagen mit dem Schweißplan %2 wird die Vorwärmung nicht beurteilt: %3, Methode B endet bei %4.</translation>
    </message>
    <message>
        <source>plate thickness %1</source>
        <translation>Blechdicke %1</translation>
    </message>
    <message>
        <source>diffusible hydrogen %1</source>
        <translation>diffusibler Wasserstoff %1</translation>
    </message>
    <message>
        <source>heat input %1</source>
        <translation>Wärmeeinbringung %1</translation>
    </message>
    <message>
        <source>%1 on seams of %2, nor judged: %3 is %4, the formulas hold up to %5.</source>
        <translation>%1 auf Nähten von %2, noch beurteilt: %3 ist %4, die Formeln gelten bis %5.</translation>
    </message>
    <message>
        <source>%1 on seams of %2, nor judged: %3 is %4, the formulas hold from %5.</source>
        <translation>%1 auf Nähten von %2, noch beurteilt: %3 ist %4, die Formeln gelten ab %5.</translation>
    </message>
    <message>
        <source>t8/5, carbon equivalents, preheat, hardness and penetration aren&apos;t computed</source>
        <translation>t8/5, Kohlenstoffäquivalente, Vorwärmung, Härte und Einbrand werden weder berechnet</translation>
    </message>
    <message>
        <source>CET and preheat aren&apos;t computed</source>
        <translation>CET und Vorwärmung werden weder berechnet</translation>
    </message>
    <message>
        <source>Hardness isn&apos;t computed</source>
        <translation>Die Härte wird weder berechnet</translation>
    </message>
    <message>
        <source>Preheat isn&apos;t computed</source>
        <translation>Die Vorwärmung wird weder berechnet</translation>
    </message>
    <message>
        <source>Qualification %1 isn&apos;t judged: it says nothing of what was tested.</source>
        <translation>Die Qualifizierung %1 wird nicht beurteilt: Sie sagt nicht, was geprüft wurde.</translation>
    </message>
    <message>
        <source>Qualification %1 by %2 isn&apos;t judged: whether execution class and grade admit that route, and its ranges.</source>
        <translation>Die Qualifizierung %1 nach %2 wird nicht beurteilt: ob Ausführungsklasse und Stahlsorte diesen Weg zulassen, und ihre Bereiche.</translation>
    </message>
    <message>
        <source>Qualification %1 isn&apos;t judged: it states no basis.</source>
        <translation>Die Qualifizierung %1 wird nicht beurteilt: Sie nennt keine Grundlage.</translation>
    </message>
    <message>
        <source>Qualification %1 isn&apos;t judged: the ranges of its basis, %2, aren&apos;t known here.</source>
        <translation>Die Qualifizierung %1 wird nicht beurteilt: Die Bereiche ihrer Grundlage, %2, sind hier nicht bekannt.</translation>
    </message>
    <message>
        <source>%1 of %2 is outside the %3 that %4 qualifies.</source>
        <translation>%1 von %2 liegt außerhalb von %3, wofür %4 qualifiziert.</translation>
    </message>
    <message>
        <source>%1 %2 is used, %3 was tested with %4.</source>
        <translation>%1 %2 wird verwendet, %3 wurde mit %4 geprüft.</translation>
    </message>
    <message>
        <source>Preheat is below the qualification test&apos;s.</source>
        <translation>Die Vorwärmung liegt unter der der Verfahrensprüfung.</translation>
    </message>
    <message>
        <source>Position %1 and the path&apos;s direction (up) contradict each other.</source>
        <translation>Position %1 und die Richtung des Wegs (steigend) widersprechen einander.</translation>
    </message>
    <message>
        <source>Position %1 and the path&apos;s direction (down) contradict each other.</source>
        <translation>Position %1 und die Richtung des Wegs (fallend) widersprechen einander.</translation>
    </message>
    <message>
        <source>Schedule %1 is for %2, the seam is welded in %3.</source>
        <translation>Schweißplan %1 gilt für %2, die Naht wird in %3 geschweißt.</translation>
    </message>
    <message>
        <source>Tacks of leg %1 mm stand out of a seam of leg %2 mm.</source>
        <translation>Heftstellen mit Schenkel %1 mm stehen aus einer Naht mit Schenkel %2 mm heraus.</translation>
    </message>
    <message>
        <source>Tacks of %1 mm are shorter than %2 mm.</source>
        <translation>Heftstellen von %1 mm sind kürzer als %2 mm.</translation>
    </message>
    <message>
        <source>Through-arc tracking on a leg of %1 mm: it works from about 3 to 4 mm.</source>
        <translation>Nahtverfolgung durch den Lichtbogen an einem Schenkel von %1 mm: Sie geht ab etwa 3 bis 4 mm.</translation>
    </message>
    <message>
        <source>Through-arc tracking needs a weave, and schedule %1 has none.</source>
        <translation>Nahtverfolgung durch den Lichtbogen braucht Pendeln, und Schweißplan %1 hat keines.</translation>
    </message>
    <message>
        <source>The accepted finding %1 isn&apos;t there any more; drop its acceptance.</source>
        <translation>Der angenommene Befund %1 ist nicht mehr da; die Annahme kann entfallen.</translation>
    </message>
    <message>
        <source>The seams of balance group %1 lie in one place: there are no sides to take by turns.</source>
        <translation>Die Nähte der Wechselgruppe %1 liegen an einem Ort: Es gibt keine Seiten, die abwechseln könnten.</translation>
    </message>
    <message>
        <source>Balance group %1 and another come after one another: its sides aren&apos;t taken by turns.</source>
        <translation>Wechselgruppe %1 und eine andere folgen gegenseitig aufeinander: Ihre Seiten wechseln nicht ab.</translation>
    </message>
    <message>
        <source>Balance group %1: it is begun right after %2 on the same side, though %3 on the other side could be.</source>
        <translation>Wechselgruppe %1: Sie wird gleich nach %2 auf derselben Seite begonnen, obwohl %3 auf der anderen Seite möglich wäre.</translation>
    </message>
    <message>
        <source>The seam has no schedule: it isn&apos;t in the timeline.</source>
        <translation>Die Naht hat keinen Schweißplan: Sie steht nicht im Zeitplan.</translation>
    </message>
    <message>
        <source>The seam is shorter than one of its runs: it isn&apos;t in the timeline.</source>
        <translation>Die Naht ist kürzer als eines ihrer Stücke: Sie steht nicht im Zeitplan.</translation>
    </message>
    <message>
        <source>No robot of the cell reaches the seam: it isn&apos;t in the timeline.</source>
        <translation>Kein Roboter der Zelle erreicht die Naht: Sie steht nicht im Zeitplan.</translation>
    </message>
    <message>
        <source>What is loaded on %1 doesn&apos;t fit the seam&apos;s schedules and can&apos;t be changed, and no other robot reaches it: it isn&apos;t in the timeline.</source>
        <translation>Was %1 geladen hat, passt nicht zu den Schweißplänen der Naht und kann nicht gewechselt werden, und kein anderer Roboter erreicht sie: Sie steht nicht im Zeitplan.</translation>
    </message>
    <message>
        <source>What is loaded on %1 doesn&apos;t fit and can&apos;t be changed: %2 welds the seam.</source>
        <translation>Was %1 geladen hat, passt nicht und kann nicht gewechselt werden: %2 schweißt die Naht.</translation>
    </message>
    <message>
        <source>It comes after the manual seam %1, which is taken as welded before the robots begin.</source>
        <translation>Sie folgt auf die Handnaht %1, die als vor den Robotern geschweißt gilt.</translation>
    </message>
    <message>
        <source>The cycle takes %1 s; the takt leaves %2 s.</source>
        <translation>Die Taktzeit ist %1 s; der Takt lässt %2 s.</translation>
    </message>
    <message>
        <source>The cycle takes %1 s; the takt leaves %2 s (%3 % of %4 s).</source>
        <translation>Die Taktzeit ist %1 s; der Takt lässt %2 s (%3 % von %4 s).</translation>
    </message>
    <message>
        <source>One run of arc is longer than the torch may weld between two services.</source>
        <translation>Ein Lichtbogen ist länger, als der Brenner zwischen zwei Reinigungen schweißen darf.</translation>
    </message>
    <message>
        <source>The robot ends with %1 and began with %2: changing back isn&apos;t in the cycle.</source>
        <translation>Der Roboter endet mit %1 und begann mit %2: Der Wechsel zurück ist nicht in der Taktzeit.</translation>
    </message>
    <message>
        <source>In its worst 10 min the source heats like %1 A for ever; rated %2 A at %3 % it carries %4 A.</source>
        <translation>In ihren schlimmsten 10 min erwärmt sich die Stromquelle wie bei %1 A Dauerstrom; mit %2 A bei %3 % trägt sie %4 A.</translation>
    </message>
    <message>
        <source>In the file it stands before a seam that must be welded first: a later seam was taken ahead of it.</source>
        <translation>In der Datei steht sie vor einer Naht, die zuerst geschweißt werden muss: Eine spätere wurde vorgezogen.</translation>
    </message>
    <message>
        <source>The weldment&apos;s order doesn&apos;t fit its seams: %1.</source>
        <translation>Die Reihenfolge des Bauteils passt nicht zu seinen Nähten: %1.</translation>
    </message>
    <message>
        <source>Without %1 no robot reaches it: weld it by hand, or it waits.</source>
        <translation>Ohne %1 erreicht sie kein Roboter: von Hand schweißen, oder sie wartet.</translation>
    </message>
    <message>
        <source>Without %1 another robot welds %2 seam of it.</source>
        <translation>Ohne %1 schweißt ein anderer Roboter %2 Naht davon.</translation>
    </message>
    <message>
        <source>Without %1 another robot welds %2 seams of it.</source>
        <translation>Ohne %1 schweißt ein anderer Roboter %2 Nähte davon.</translation>
    </message>
    <message>
        <source>The given order has units behind others that are due later: levelling puts that right.</source>
        <translation>In der gegebenen Folge stehen Einheiten hinter anderen, die später fällig sind: Das Glätten richtet das.</translation>
    </message>
    <message>
        <source>The order has units behind others that are due later.</source>
        <translation>In der Folge stehen Einheiten hinter anderen, die später fällig sind.</translation>
    </message>
    <message>
        <source>The line gives %1 units an hour; the takt wants %2.</source>
        <translation>Die Linie liefert %1 Einheiten je Stunde; der Takt verlangt %2.</translation>
    </message>
    <message>
        <source>On the whole the line keeps takt, but %1 of %2 units come late.</source>
        <translation>Im Ganzen hält die Linie den Takt, aber %1 von %2 Einheiten kommen spät.</translation>
    </message>
    <message>
        <source>The robot ends with another wire than it began with: changing back is in the line&apos;s cell time.</source>
        <translation>Der Roboter endet mit einem anderen Draht, als er begann: Der Wechsel zurück ist in der Zellenzeit der Linie.</translation>
    </message>
    <message>
        <source>It has %1 manual seams and no manual_s: the line takes them as no work.</source>
        <translation>Sie hat %1 Handnähte und kein manual_s: Die Linie nimmt sie als keine Arbeit.</translation>
    </message>
    <message>
        <source>The cell has two stations and loads one while it welds at the other: the stage takes no time of its own.</source>
        <translation>Die Zelle hat zwei Stationen und lädt an einer, während sie an der anderen schweißt: Die Stufe braucht keine eigene Zeit.</translation>
    </message>
    <message>
        <source>The unit (%1) waits: %2. No complete unit is behind it.</source>
        <translation>Die Einheit (%1) wartet: %2. Keine vollständige steht hinter ihr.</translation>
    </message>
    <message>
        <source>The unit (%1) waits: %2. %3 is released next.</source>
        <translation>Die Einheit (%1) wartet: %2. Als nächste wird %3 freigegeben.</translation>
    </message>
    <message>
        <source>The arc is never on: the highest current is %1 A (is the log in another unit?).</source>
        <translation>Der Lichtbogen brennt nie: Der höchste Strom ist %1 A (steht das Protokoll in einer anderen Einheit?).</translation>
    </message>
    <message>
        <source>Times have no UTC offset: they are taken as UTC.</source>
        <translation>Die Zeiten haben keinen UTC-Versatz: Sie gelten als UTC.</translation>
    </message>
    <message>
        <source>%1 of %2 rows are rejected.</source>
        <translation>%1 von %2 Zeilen sind abgewiesen.</translation>
    </message>
    <message>
        <source>The log names no weldment: the plan&apos;s only one is taken.</source>
        <translation>Das Protokoll nennt kein Bauteil: Das einzige des Plans gilt.</translation>
    </message>
    <message>
        <source>Job numbers that the columns file doesn&apos;t know: %1.</source>
        <translation>Programmnummern, die die Spaltendatei nicht kennt: %1.</translation>
    </message>
    <message>
        <source>The manual seam&apos;s result is &quot;%1&quot;.</source>
        <translation>Das Ergebnis der Handnaht ist „%1“.</translation>
    </message>
    <message>
        <source>The manual seam has no result.</source>
        <translation>Die Handnaht hat kein Ergebnis.</translation>
    </message>
    <message>
        <source>The manual seam&apos;s result &quot;%1&quot; is neither pass nor fail.</source>
        <translation>Das Ergebnis der Handnaht „%1“ ist weder „pass“ noch „fail“.</translation>
    </message>
    <message>
        <source>Welded by schedule %1 where the plan has %2.</source>
        <translation>Nach Schweißplan %1 geschweißt, wo der Plan %2 hat.</translation>
    </message>
    <message>
        <source>No record of this manual pass.</source>
        <translation>Kein Nachweis dieser Lage von Hand.</translation>
    </message>
    <message>
        <source>No record of this pass in the logs.</source>
        <translation>Kein Nachweis dieser Lage in den Protokollen.</translation>
    </message>
    <message>
        <source>Welded by a robot where the plan has a manual seam.</source>
        <translation>Vom Roboter geschweißt, wo der Plan eine Handnaht hat.</translation>
    </message>
    <message>
        <source>Welded by hand where the plan has a robot seam.</source>
        <translation>Von Hand geschweißt, wo der Plan eine Roboternaht hat.</translation>
    </message>
    <message>
        <source>Welded, but not in the plan.</source>
        <translation>Geschweißt, aber nicht im Plan.</translation>
    </message>
    <message>
        <source>Welded more than once.</source>
        <translation>Mehr als einmal geschweißt.</translation>
    </message>
    <message>
        <source>The logged wire feed of %1 m/min melts at about %2 A, and %3 A are logged: one of the two is wrong, or the wire is another.</source>
        <translation>Der protokollierte Drahtvorschub von %1 m/min schmilzt bei etwa %2 A, und %3 A sind protokolliert: Eines von beiden ist falsch, oder der Draht ist ein anderer.</translation>
    </message>
    <message>
        <source>The wire fed lays %1 mm2 at the logged travel speed where the schedule&apos;s lays %2 mm2.</source>
        <translation>Der geförderte Draht legt %1 mm² bei der protokollierten Geschwindigkeit, der des Schweißplans %2 mm².</translation>
    </message>
    <message>
        <source>Neither a plan nor --process tells the process, so no thermal efficiency: arc energy, but no heat input.</source>
        <translation>Weder Plan noch --process nennt den Prozess, also kein Wirkungsgrad: Streckenenergie, aber keine Wärmeeinbringung.</translation>
    </message>
    <message>
        <source>No thermal efficiency is given for process %1: no heat input.</source>
        <translation>Für Prozess %1 ist kein Wirkungsgrad bekannt: keine Wärmeeinbringung.</translation>
    </message>
    <message>
        <source>The schedule limits what the log doesn&apos;t tell: %1.</source>
        <translation>Der Schweißplan begrenzt, was das Protokoll nicht sagt: %1.</translation>
    </message>
    <message>
        <source>The schedule limits the heat input, and the log gives none.</source>
        <translation>Der Schweißplan begrenzt die Wärmeeinbringung, und das Protokoll gibt keine.</translation>
    </message>
    <message>
        <source>The schedule limits the cooling time t8/5, and the log gives none.</source>
        <translation>Der Schweißplan begrenzt die Abkühlzeit t8/5, und das Protokoll gibt keine.</translation>
    </message>
    <message>
        <source>No arc is longer than its start and crater times together: nothing steady that limits could judge.</source>
        <translation>Kein Lichtbogen ist länger als Start- und Kraterzeit zusammen: nichts Gleichmäßiges, woran Grenzen messen könnten.</translation>
    </message>
    <message>
        <source>Time goes backwards %1 within the pass, %2: the record can&apos;t be trusted (small disorder can be put right with --sort-window).</source>
        <translation>Die Zeit läuft in der Lage %1 rückwärts, %2: Dem Nachweis ist nicht zu trauen (kleine Unordnung richtet --sort-window).</translation>
    </message>
    <message>
        <source>Samples have the same time as the one before %1, %2.</source>
        <translation>Messwerte haben %1 dieselbe Zeit wie der davor, %2.</translation>
    </message>
    <message>
        <source>Samples are missing %1 with the arc on before, %2: that time counts as arc-off.</source>
        <translation>Messwerte fehlen %1 bei brennendem Lichtbogen, %2: Diese Zeit zählt als Lichtbogen aus.</translation>
    </message>
    <message>
        <source>Current and voltage repeat to the last digit for %1, %2: a frozen logger, left out of the arc time.</source>
        <translation>Strom und Spannung wiederholen sich %1 lang auf die letzte Stelle, %2: ein eingefrorenes Messgerät, aus der Lichtbogenzeit gelassen.</translation>
    </message>
    <message>
        <source>Voltage, power or energy is missing for %1 of the arc time: the energy is too low by that.</source>
        <translation>Spannung, Leistung oder Energie fehlt für %1 der Lichtbogenzeit: Um so viel ist die Energie zu klein.</translation>
    </message>
    <message>
        <source>A counter goes back %1, %2: that step isn&apos;t counted.</source>
        <translation>Ein Zähler läuft %1 zurück, %2: Dieser Schritt zählt nicht.</translation>
    </message>
    <message>
        <source>The logged arc_on disagrees with the current %1, %2; the current decides.</source>
        <translation>Das protokollierte arc_on widerspricht dem Strom %1, %2; der Strom entscheidet.</translation>
    </message>
    <message>
        <source>Averaged signals (method A) on a waveform-controlled schedule: power and energy are the product of means times the schedule&apos;s waveform factor %1.</source>
        <translation>Gemittelte Signale (Verfahren A) bei einem Schweißplan mit geregelter Wellenform: Leistung und Energie sind das Produkt der Mittel mal dem Formfaktor %1 des Schweißplans.</translation>
    </message>
    <message>
        <source>Averaged signals (method A) on a waveform-controlled schedule; power or energy is logged, so no waveform factor is applied.</source>
        <translation>Gemittelte Signale (Verfahren A) bei einem Schweißplan mit geregelter Wellenform; Leistung oder Energie ist protokolliert, daher kein Formfaktor.</translation>
    </message>
    <message>
        <source>Samples every %1 ms don&apos;t follow the waveform: the mean of their products holds only as a sample of it.</source>
        <translation>Messwerte alle %1 ms folgen der Wellenform nicht: Das Mittel ihrer Produkte gilt nur als Stichprobe.</translation>
    </message>
    <message>
        <source>The wire counter gives %1 m/min, the logged wire feed is %2 m/min.</source>
        <translation>Der Drahtzähler gibt %1 m/min, der protokollierte Drahtvorschub ist %2 m/min.</translation>
    </message>
    <message>
        <source>The wire counter gives %1 m/min, the planned wire feed is %2 m/min.</source>
        <translation>Der Drahtzähler gibt %1 m/min, der geplante Drahtvorschub ist %2 m/min.</translation>
    </message>
    <message>
        <source>The plan requires %1 of each pass, and the log has none for this one.</source>
        <translation>Der Plan verlangt %1 für jede Lage, und das Protokoll hat für diese keines.</translation>
    </message>
    <message>
        <source>The logged schedule revision changes within the pass.</source>
        <translation>Die protokollierte Revision des Schweißplans wechselt in der Lage.</translation>
    </message>
    <message>
        <source>Welded to revision %1 of schedule %2; the plan holds revision %3.</source>
        <translation>Nach Revision %1 von Schweißplan %2 geschweißt; der Plan hat Revision %3.</translation>
    </message>
    <message>
        <source>Instrument %1 (%2) was due for calibration on %3 and the pass was welded on %4.</source>
        <translation>Messgerät %1 (%2) war am %3 zur Kalibrierung fällig, und die Lage wurde am %4 geschweißt.</translation>
    </message>
    <message>
        <source>Instrument %1 (%2), certificate %3, was due for calibration on %4 and the pass was welded on %5.</source>
        <translation>Messgerät %1 (%2), Zertifikat %3, war am %4 zur Kalibrierung fällig, und die Lage wurde am %5 geschweißt.</translation>
    </message>
    <message>
        <source>%1 is %2 where the schedule has %3: is the log in another unit?</source>
        <translation>%1 ist %2, wo der Schweißplan %3 hat: Steht das Protokoll in einer anderen Einheit?</translation>
    </message>
    <message>
        <source>The plan doesn&apos;t know this pass, so nothing says how it should be.</source>
        <translation>Der Plan kennt diese Lage nicht, also sagt nichts, wie sie sein soll.</translation>
    </message>
    <message>
        <source>The logged positions lie %1 from the seam on the mean, so they aren&apos;t used: the log may be in another frame.</source>
        <translation>Die protokollierten Orte liegen im Mittel %1 von der Naht und werden nicht verwendet: Das Protokoll mag ein anderes Koordinatensystem haben.</translation>
    </message>
    <message>
        <source>The logged positions don&apos;t move along the seam while the arc is on, so they aren&apos;t used.</source>
        <translation>Die protokollierten Orte rücken bei brennendem Lichtbogen nicht längs der Naht vor und werden nicht verwendet.</translation>
    </message>
    <message>
        <source>The travel speed is logged for %1 s of %2 s arc time: the welded length is too short by the rest.</source>
        <translation>Die Schweißgeschwindigkeit ist für %1 s von %2 s Lichtbogenzeit protokolliert: Um den Rest ist die Länge zu kurz.</translation>
    </message>
    <message>
        <source>No position or travel speed is logged, and arc time times planned speed gives %1 where the plan has %2: no welded length, so no heat input.</source>
        <translation>Weder Ort noch Geschwindigkeit ist protokolliert, und Lichtbogenzeit mal geplante Geschwindigkeit gibt %1, wo der Plan %2 hat: keine geschweißte Länge, also keine Wärmeeinbringung.</translation>
    </message>
    <message>
        <source>Welded over %1 where the plan has %2.</source>
        <translation>Über %1 geschweißt, wo der Plan %2 hat.</translation>
    </message>
    <message>
        <source>Welded over %1 where the seam needs %2: %3 short, and %4 are allowed.</source>
        <translation>Über %1 geschweißt, wo die Naht %2 braucht: %3 zu kurz, erlaubt sind %4.</translation>
    </message>
    <message>
        <source>Welded over %1 where the seam needs %2: a part of the pass, until another log goes on with it or its unit is closed.</source>
        <translation>Über %1 geschweißt, wo die Naht %2 braucht: ein Teil der Lage, bis ein anderes Protokoll sie fortsetzt oder ihre Einheit abgeschlossen ist.</translation>
    </message>
    <message>
        <source>Welded over %1 (runs: %2) where the seam needs %3 (runs: %4): %5 short, and %6 are allowed.</source>
        <translation>Über %1 geschweißt (Stücke: %2), wo die Naht %3 braucht (Stücke: %4): %5 zu kurz, erlaubt sind %6.</translation>
    </message>
    <message>
        <source>Welded over %1 (runs: %2) where the seam needs %3 (runs: %4): a part of the pass, until another log goes on with it or its unit is closed.</source>
        <translation>Über %1 geschweißt (Stücke: %2), wo die Naht %3 braucht (Stücke: %4): ein Teil der Lage, bis ein anderes Protokoll sie fortsetzt oder ihre Einheit abgeschlossen ist.</translation>
    </message>
    <message>
        <source>A gap between two runs is %1 long where the plan has %2.</source>
        <translation>Eine Lücke zwischen zwei Stücken ist %1 lang, wo der Plan %2 hat.</translation>
    </message>
    <message>
        <source>The arc was on where the time of a unit ended: this pass was cut there, and which unit it was welded on can&apos;t be told.</source>
        <translation>Der Lichtbogen brannte, als die Zeit einer Einheit endete: Die Lage wurde dort geteilt, und zu welcher Einheit sie gehört, lässt sich nicht sagen.</translation>
    </message>
    <message>
        <source>Estimated HAZ hardness of the record is %1 HV, above the limit of %2 HV (its scatter is 56 HV either way).</source>
        <translation>Die geschätzte WEZ-Härte des Nachweises ist %1 HV, über der Grenze von %2 HV (Streuung 56 HV nach beiden Seiten).</translation>
    </message>
    <message>
        <source>The log has neither positions nor travel speed, and no plan knows the seam: energy, but no heat input.</source>
        <translation>Das Protokoll hat weder Orte noch Geschwindigkeit, und kein Plan kennt die Naht: Energie, aber keine Wärmeeinbringung.</translation>
    </message>
    <message>
        <source>It began before %1, which lies under it, had ended.</source>
        <translation>Sie begann, bevor %1 darunter zu Ende war.</translation>
    </message>
    <message>
        <source>It began %1 after the pass before it; by conduction the seam needs %2 to cool to the interpass limit, and no temperature is logged.</source>
        <translation>Sie begann %1 nach der Lage davor; durch Leitung braucht die Naht %2, um auf die Zwischenlagengrenze abzukühlen, und keine Temperatur ist protokolliert.</translation>
    </message>
    <message>
        <source>It began before %1 had ended; the plan puts that seam before it.</source>
        <translation>Sie begann, bevor %1 zu Ende war; der Plan stellt diese Naht davor.</translation>
    </message>
    <message>
        <source>The chart of %1 of schedule %2 signals &quot;%3&quot; here first, %4 times in all.</source>
        <translation>Die Regelkarte von %1 des Schweißplans %2 zeigt hier zuerst „%3“, insgesamt %4-mal.</translation>
    </message>
    <message>
        <source>Ppk of %1 is %2 over %3 passes.</source>
        <translation>Ppk von %1 ist %2 über %3 Lagen.</translation>
    </message>
    <message>
        <source>%1 drifts by %2 (%3 to %4) a day over %5 passes.</source>
        <translation>%1 läuft um %2 (%3 bis %4) am Tag weg, über %5 Lagen.</translation>
    </message>
    <message>
        <source>Mean current of the steady part</source>
        <translation>Mittlerer Strom des gleichmäßigen Teils</translation>
    </message>
    <message>
        <source>Mean voltage of the steady part</source>
        <translation>Mittlere Spannung des gleichmäßigen Teils</translation>
    </message>
    <message>
        <source>Mean wire feed speed of the steady part</source>
        <translation>Mittlerer Drahtvorschub des gleichmäßigen Teils</translation>
    </message>
    <message>
        <source>Mean travel speed of the steady part</source>
        <translation>Mittlere Schweißgeschwindigkeit des gleichmäßigen Teils</translation>
    </message>
    <message>
        <source>Mean gas flow of the steady part</source>
        <translation>Mittlerer Gasfluss des gleichmäßigen Teils</translation>
    </message>
    <message>
        <source>Interpass temperature</source>
        <translation>Zwischenlagentemperatur</translation>
    </message>
    <message>
        <source>Heat input of the whole pass</source>
        <translation>Wärmeeinbringung der ganzen Lage</translation>
    </message>
    <message>
        <source>Fastest cooling time t8/5 (cold, thicker plate)</source>
        <translation>Schnellste Abkühlzeit t8/5 (kalt, dickeres Blech)</translation>
    </message>
    <message>
        <source>Slowest cooling time t8/5 (hot, thinner plate)</source>
        <translation>Langsamste Abkühlzeit t8/5 (heiß, dünneres Blech)</translation>
    </message>
    <message>
        <source>Fastest cooling time t8/5 (from the logged temperature, thicker plate)</source>
        <translation>Schnellste Abkühlzeit t8/5 (von der protokollierten Temperatur, dickeres Blech)</translation>
    </message>
    <message>
        <source>Slowest cooling time t8/5 (from the logged temperature, thinner plate)</source>
        <translation>Langsamste Abkühlzeit t8/5 (von der protokollierten Temperatur, dünneres Blech)</translation>
    </message>
    <message>
        <source>Fillet leg</source>
        <translation>Schenkel der Kehlnaht</translation>
    </message>
    <message>
        <source>Fillet throat</source>
        <translation>a-Maß der Kehlnaht</translation>
    </message>
    <message>
        <source>Fillet throat by quality level</source>
        <translation>Kehlnahtdicke nach Bewertungsgruppe</translation>
    </message>
    <message>
        <source>Fillet throat (drawn and 25 %, at least 1 mm)</source>
        <translation>Kehlnahtdicke (gezeichnet und 25 %, mindestens 1 mm)</translation>
    </message>
    <message>
        <source>Fillet leg at the largest gap</source>
        <translation>Schenkel der Kehlnaht am größten Spalt</translation>
    </message>
    <message>
        <source>Fillet throat at the largest gap</source>
        <translation>a-Maß der Kehlnaht am größten Spalt</translation>
    </message>
    <message>
        <source>Plate thickness</source>
        <translation>Blechdicke</translation>
    </message>
    <message>
        <source>Gap</source>
        <translation>Spalt</translation>
    </message>
    <message>
        <source>draft</source>
        <translation>Entwurf</translation>
    </message>
    <message>
        <source>reviewed</source>
        <translation>geprüft</translation>
    </message>
    <message>
        <source>without a status</source>
        <translation>ohne Status</translation>
    </message>
    <message>
        <source>of unstated basis</source>
        <translation>ohne Angabe der Herkunft</translation>
    </message>
    <message>
        <source>standard-maximum</source>
        <translation>das Höchstmaß der Norm</translation>
    </message>
    <message>
        <source>typical</source>
        <translation>ein üblicher Wert</translation>
    </message>
    <message>
        <source>Estimated HAZ hardness (scatter +-56 HV)</source>
        <translation>Geschätzte WEZ-Härte (Streuung ±56 HV)</translation>
    </message>
    <message>
        <source>Heat input</source>
        <translation>Wärmeeinbringung</translation>
    </message>
    <message>
        <source>Leg as drawn</source>
        <translation>Schenkel wie gezeichnet</translation>
    </message>
    <message>
        <source>Process</source>
        <translation>Prozess</translation>
    </message>
    <message>
        <source>Transfer mode</source>
        <translation>Werkstoffübergang</translation>
    </message>
    <message>
        <source>1 beyond 3 sigma</source>
        <translation>1 jenseits 3 Sigma</translation>
    </message>
    <message>
        <source>2 of 3 beyond 2 sigma</source>
        <translation>2 von 3 jenseits 2 Sigma</translation>
    </message>
    <message>
        <source>4 of 5 beyond 1 sigma</source>
        <translation>4 von 5 jenseits 1 Sigma</translation>
    </message>
    <message>
        <source>8 in a row on one side</source>
        <translation>8 in Folge auf einer Seite</translation>
    </message>
    <message>
        <source>once</source>
        <translation>einmal</translation>
    </message>
    <message>
        <source>%1 Accepted by %2 on %3: %4</source>
        <translation>%1 Angenommen von %2 am %3: %4</translation>
    </message>
    <message>
        <source>plan limit</source>
        <translation>Grenze des Plans</translation>
    </message>
    <message>
        <source>plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>common practice, no source</source>
        <translation>übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>adams (recalled); plan limit</source>
        <translation>adams (aus dem Gedächtnis); Grenze des Plans</translation>
    </message>
    <message>
        <source>en-1011-2, Annex D (part read); plan limit</source>
        <translation>en-1011-2, Anhang D (teils gelesen); Grenze des Plans</translation>
    </message>
    <message>
        <source>en-1011-2, Annex D (part read); ILAC-G8:09/2019, 4.2.2; plan limit</source>
        <translation>en-1011-2, Anhang D (teils gelesen); ILAC-G8:09/2019, 4.2.2; Grenze des Plans</translation>
    </message>
    <message>
        <source>yurioka-1987 (recalled); plan limit</source>
        <translation>yurioka-1987 (aus dem Gedächtnis); Grenze des Plans</translation>
    </message>
    <message>
        <source>%1 (recalled)</source>
        <translation>%1 (aus dem Gedächtnis)</translation>
    </message>
    <message>
        <source>AWS D1.1, prequalified procedures (recalled)</source>
        <translation>AWS D1.1, vorqualifizierte Schweißanweisungen (aus dem Gedächtnis)</translation>
    </message>
    <message>
        <source>ISO 5817:2014, Table 1, 5214</source>
        <translation>ISO 5817:2014, Tabelle 1, 5214</translation>
    </message>
    <message>
        <source>ISO/TR 15608, Table 1 (recalled)</source>
        <translation>ISO/TR 15608, Tabelle 1 (aus dem Gedächtnis)</translation>
    </message>
    <message>
        <source>Yurioka et al. 1987, stated domain</source>
        <translation>Yurioka et al. 1987, genannter Geltungsbereich</translation>
    </message>
    <message>
        <source>AWS D1.1:2015, Table 5.7</source>
        <translation>AWS D1.1:2015, Tabelle 5.7</translation>
    </message>
    <message>
        <source>EN 1011-1:2009, Table 1</source>
        <translation>EN 1011-1:2009, Tabelle 1</translation>
    </message>
    <message>
        <source>EN 1011-2:2001, C.3 (method B)</source>
        <translation>EN 1011-2:2001, C.3 (Verfahren B)</translation>
    </message>
    <message>
        <source>IEC 60974-1, rating plate (recalled)</source>
        <translation>IEC 60974-1, Leistungsschild (aus dem Gedächtnis)</translation>
    </message>
    <message>
        <source>IEC 60974-1 duty cycle of 10 min (recalled); I2 = I1*sqrt(D1/D2), an estimate</source>
        <translation>IEC 60974-1, Spieldauer 10 min (aus dem Gedächtnis); I2 = I1*sqrt(D1/D2), eine Schätzung</translation>
    </message>
    <message>
        <source>ILAC-G8:09/2019, 4.2.2; plan limit</source>
        <translation>ILAC-G8:09/2019, 4.2.2; Grenze des Plans</translation>
    </message>
    <message>
        <source>ISO 15614-1:2017, level 2 (recalled)</source>
        <translation>ISO 15614-1:2017, Stufe 2 (aus dem Gedächtnis)</translation>
    </message>
    <message>
        <source>iso-22514-2 (recalled); common practice, no source for the limit of 1.33</source>
        <translation>iso-22514-2 (aus dem Gedächtnis); übliche Praxis, ohne Quelle für die Grenze 1.33</translation>
    </message>
    <message>
        <source>Wire feed speed</source>
        <translation>Drahtvorschub</translation>
    </message>
    <message>
        <source>Travel speed</source>
        <translation>Schweißgeschwindigkeit</translation>
    </message>
    <message>
        <source>Current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>Arc voltage</source>
        <translation>Lichtbogenspannung</translation>
    </message>
    <message>
        <source>Estimated HAZ hardness</source>
        <translation>Geschätzte WEZ-Härte</translation>
    </message>
    <message>
        <source>Preheat needed (method B)</source>
        <translation>Nötige Vorwärmung (Verfahren B)</translation>
    </message>
    <message>
        <source>Longest single arc</source>
        <translation>Längster Lichtbogen</translation>
    </message>
    <message>
        <source>Heat input, as qualified</source>
        <translation>Wärmeeinbringung, wie qualifiziert</translation>
    </message>
    <message>
        <source>repair at %1</source>
        <translation>Reparatur an %1</translation>
    </message>
    <message>
        <source>wire or tip change at %1</source>
        <translation>Wechsel von Draht oder Kontaktrohr an %1</translation>
    </message>
    <message>
        <source>rework or scrap at %1</source>
        <translation>Nacharbeit oder Ausschuss an %1</translation>
    </message>
    <message>
        <source>work at %1</source>
        <translation>Arbeit an %1</translation>
    </message>
    <message>
        <source>time -10 %</source>
        <translation>Zeit −10 %</translation>
    </message>
    <message>
        <source>1 server more</source>
        <translation>1 Platz mehr</translation>
    </message>
    <message>
        <source>buffer 1 more</source>
        <translation>Puffer um 1 größer</translation>
    </message>
    <message>
        <source>no stops</source>
        <translation>keine Störungen</translation>
    </message>
    <message>
        <source>all right first time</source>
        <translation>alles auf Anhieb gut</translation>
    </message>
    <message>
        <source>its cart isn&apos;t there</source>
        <translation>ihr Wagen ist nicht da</translation>
    </message>
    <message>
        <source>%1 %2 is missing (none there)</source>
        <translation>%1 %2 fehlt (keines da)</translation>
    </message>
    <message>
        <source>%1 %2 are missing (none there)</source>
        <translation>%1 %2 fehlen (keines da)</translation>
    </message>
    <message>
        <source>%1 %2 is missing (%3 of %4 there)</source>
        <translation>%1 %2 fehlt (%3 von %4 da)</translation>
    </message>
    <message>
        <source>%1 %2 are missing (%3 of %4 there)</source>
        <translation>%1 %2 fehlen (%3 von %4 da)</translation>
    </message>
    <message>
        <source>%1 %2 too many (the weldment has none)</source>
        <translation>%1 %2 zu viel (das Bauteil hat keines)</translation>
    </message>
    <message>
        <source>%1 %2 too many (%3 for %4)</source>
        <translation>%1 %2 zu viel (%3 statt %4)</translation>
    </message>
    <message>
        <source>Unwelded: %1 of its %2 robot seams. This isn&apos;t the cycle of a finished weldment: it has no margin against takt.</source>
        <translation>Ungeschweißt: %1 von %2 Roboternähten. Das ist nicht die Taktzeit eines fertigen Bauteils: Sie hat keinen Abstand zum Takt.</translation>
    </message>
    <message>
        <source>Unwelded: %1 of its %2 robot seams. Units of it that wait and aren&apos;t run: %3.</source>
        <translation>Ungeschweißt: %1 von %2 Roboternähten. Einheiten davon, die warten und nicht laufen: %3.</translation>
    </message>
    <message>
        <source>nobody welds %1 of its %2 robot seams</source>
        <translation>niemand schweißt %1 von %2 Roboternähten</translation>
    </message>
</context>
<context>
    <name>MainWindow</name>
    <message>
        <source>%1 and %2 more</source>
        <translation>%1 und %2 weitere</translation>
    </message>
</context>
<context>
    <name>Place</name>
    <message>
        <source>%1/pass %2</source>
        <translation>%1/Lage %2</translation>
    </message>
    <message>
        <source>schedule %1</source>
        <translation>Schweißplan %1</translation>
    </message>
</context>
<context>
    <name>RecordCause</name>
    <message>
        <source>within the uncertainty of a limit</source>
        <translation>innerhalb der Unsicherheit einer Grenze</translation>
    </message>
    <message>
        <source>above a limit</source>
        <translation>über einer Grenze</translation>
    </message>
    <message>
        <source>below a limit</source>
        <translation>unter einer Grenze</translation>
    </message>
    <message>
        <source>instrument overdue</source>
        <translation>Messgerät überfällig</translation>
    </message>
    <message>
        <source>shorter than its seam</source>
        <translation>kürzer als ihre Naht</translation>
    </message>
    <message>
        <source>a part of its seam</source>
        <translation>ein Teil ihrer Naht</translation>
    </message>
    <message>
        <source>length not known</source>
        <translation>Länge nicht bekannt</translation>
    </message>
    <message>
        <source>schedule revision</source>
        <translation>Revision des Schweißplans</translation>
    </message>
    <message>
        <source>logger frozen</source>
        <translation>Aufzeichnung eingefroren</translation>
    </message>
    <message>
        <source>energy incomplete</source>
        <translation>Energie unvollständig</translation>
    </message>
    <message>
        <source>no heat input</source>
        <translation>keine Wärmeeinbringung</translation>
    </message>
    <message>
        <source>no cooling time</source>
        <translation>keine Abkühlzeit</translation>
    </message>
    <message>
        <source>no steady part</source>
        <translation>kein gleichmäßiger Teil</translation>
    </message>
    <message>
        <source>required column missing</source>
        <translation>verlangte Spalte fehlt</translation>
    </message>
    <message>
        <source>times in disorder</source>
        <translation>Zeiten in Unordnung</translation>
    </message>
    <message>
        <source>cut by the unit&apos;s time</source>
        <translation>durch die Zeit der Einheit geteilt</translation>
    </message>
    <message>
        <source>order of passes</source>
        <translation>Reihenfolge der Lagen</translation>
    </message>
    <message>
        <source>result of the manual seam</source>
        <translation>Ergebnis der Handnaht</translation>
    </message>
</context>
<context>
    <name>Refusal</name>
    <message>
        <source>a text that isn&apos;t empty</source>
        <translation>ein nicht leerer Text</translation>
    </message>
    <message>
        <source>a text</source>
        <translation>ein Text</translation>
    </message>
    <message>
        <source>a date YYYY-MM-DD</source>
        <translation>ein Datum JJJJ-MM-TT</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>true oder false</translation>
    </message>
    <message>
        <source>[lower, upper], each %1</source>
        <translation>[untere, obere Grenze], jeweils %1</translation>
    </message>
    <message>
        <source>null or %1</source>
        <translation>null oder %1</translation>
    </message>
    <message>
        <source>%1, or null</source>
        <translation>%1, oder null</translation>
    </message>
    <message>
        <source>one of %1, or %2</source>
        <translation>eines von %1, oder %2</translation>
    </message>
    <message>
        <source>one of %1</source>
        <translation>eines von %1</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message>
        <source>the text %1</source>
        <translation>der Text %1</translation>
    </message>
    <message>
        <source>a list, each %1</source>
        <translation>eine Liste, jeweils %1</translation>
    </message>
    <message>
        <source>a list of %1, each %2</source>
        <translation>eine Liste mit %1 Einträgen, jeweils %2</translation>
    </message>
    <message>
        <source>a list of at least %1, each %2</source>
        <translation>eine Liste mit mindestens %1, jeweils %2</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>a number in %1</source>
        <translation>eine Zahl in %1</translation>
    </message>
    <message>
        <source>a number equal to %1</source>
        <translation>eine Zahl gleich %1</translation>
    </message>
    <message>
        <source>a number from %1 to %2</source>
        <translation>eine Zahl von %1 bis %2</translation>
    </message>
    <message>
        <source>a number above %1</source>
        <translation>eine Zahl über %1</translation>
    </message>
    <message>
        <source>a number above %1 and below %2</source>
        <translation>eine Zahl über %1 und unter %2</translation>
    </message>
    <message>
        <source>a number above %1 and at most %2</source>
        <translation>eine Zahl über %1 und höchstens %2</translation>
    </message>
    <message>
        <source>a number of at least %1</source>
        <translation>eine Zahl ab %1</translation>
    </message>
    <message>
        <source>a number of at least %1 and below %2</source>
        <translation>eine Zahl ab %1 und unter %2</translation>
    </message>
    <message>
        <source>a number below %1</source>
        <translation>eine Zahl unter %1</translation>
    </message>
    <message>
        <source>a number at most %1</source>
        <translation>eine Zahl bis %1</translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation>eine ganze Zahl</translation>
    </message>
    <message>
        <source>a whole number from %1 to %2</source>
        <translation>eine ganze Zahl von %1 bis %2</translation>
    </message>
    <message>
        <source>a whole number above %1</source>
        <translation>eine ganze Zahl über %1</translation>
    </message>
    <message>
        <source>a whole number of at least %1</source>
        <translation>eine ganze Zahl ab %1</translation>
    </message>
    <message>
        <source>a mass percentage from 0 to 100</source>
        <translation>ein Massenanteil von 0 bis 100 %</translation>
    </message>
    <message>
        <source>an object of mass percentages by element symbol</source>
        <translation>ein Objekt mit Massenanteilen je Elementzeichen</translation>
    </message>
    <message>
        <source>an id</source>
        <translation>eine Kennung</translation>
    </message>
    <message>
        <source>the id of a base metal</source>
        <translation>die Kennung eines Grundwerkstoffs</translation>
    </message>
    <message>
        <source>the id of a wire</source>
        <translation>die Kennung eines Drahts</translation>
    </message>
    <message>
        <source>the id of a gas</source>
        <translation>die Kennung eines Gases</translation>
    </message>
    <message>
        <source>the id of a power source</source>
        <translation>die Kennung einer Stromquelle</translation>
    </message>
    <message>
        <source>the id of a schedule</source>
        <translation>die Kennung eines Schweißplans</translation>
    </message>
    <message>
        <source>the id of a qualification</source>
        <translation>die Kennung einer Qualifizierung</translation>
    </message>
    <message>
        <source>the id of a seam of this weldment</source>
        <translation>die Kennung einer Naht dieses Bauteils</translation>
    </message>
    <message>
        <source>the id of a robot</source>
        <translation>die Kennung eines Roboters</translation>
    </message>
    <message>
        <source>the id of an orientation</source>
        <translation>die Kennung einer Lage</translation>
    </message>
    <message>
        <source>the id of a stage</source>
        <translation>die Kennung einer Stufe</translation>
    </message>
    <message>
        <source>a seam as weldment/seam</source>
        <translation>eine Naht als Bauteil/Naht</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>an empty text</source>
        <translation>ein leerer Text</translation>
    </message>
    <message>
        <source>an empty list</source>
        <translation>eine leere Liste</translation>
    </message>
    <message>
        <source>a list of %1</source>
        <translation>eine Liste mit %1 Einträgen</translation>
    </message>
    <message>
        <source>unit %1 in %2</source>
        <translation>Einheit %1 in %2</translation>
    </message>
    <message>
        <source>unknown unit %1 in %2</source>
        <translation>unbekannte Einheit %1 in %2</translation>
    </message>
    <message>
        <source>a path of length 0 mm</source>
        <translation>ein Verlauf der Länge 0 mm</translation>
    </message>
    <message>
        <source>points that lie apart</source>
        <translation>Punkte, die auseinander liegen</translation>
    </message>
    <message>
        <source>an electrode extension of %1 mm (contact_tip_distance_mm %2 less arc_length_mm %3)</source>
        <translation>ein freies Drahtende von %1 mm (Kontaktrohrabstand %2 minus Lichtbogenlänge %3)</translation>
    </message>
    <message>
        <source>an extension above 0 mm</source>
        <translation>ein freies Drahtende über 0 mm</translation>
    </message>
    <message>
        <source>a run of %1 mm</source>
        <translation>ein Nahtstück von %1 mm</translation>
    </message>
    <message>
        <source>at most the seam&apos;s length, %1 mm</source>
        <translation>höchstens die Länge der Naht, %1 mm</translation>
    </message>
    <message>
        <source>a run of %1 mm on a seam of %2 mm</source>
        <translation>ein Nahtstück von %1 mm an einer Naht von %2 mm</translation>
    </message>
    <message>
        <source>runs long enough that there are at most %1</source>
        <translation>so lange Nahtstücke, dass es höchstens %1 sind</translation>
    </message>
    <message>
        <source>a largest fillet on a groove</source>
        <translation>eine größte Kehlnaht an einer Fuge</translation>
    </message>
    <message>
        <source>a seam with leg_mm or throat_mm</source>
        <translation>eine Naht mit leg_mm oder throat_mm</translation>
    </message>
    <message>
        <source>at least the size as drawn, %1 mm</source>
        <translation>mindestens das gezeichnete Maß, %1 mm</translation>
    </message>
    <message>
        <source>a circle: %1</source>
        <translation>ein Kreis: %1</translation>
    </message>
    <message>
        <source>seams of which each comes after others without coming after itself</source>
        <translation>Nähte, von denen keine über andere nach sich selbst kommt</translation>
    </message>
    <message>
        <source>a comma</source>
        <translation>ein Komma</translation>
    </message>
    <message>
        <source>an open quote in %1</source>
        <translation>ein offenes Anführungszeichen in %1</translation>
    </message>
    <message>
        <source>a quote at the end of the item</source>
        <translation>ein Anführungszeichen am Ende des Eintrags</translation>
    </message>
    <message>
        <source>a finite number</source>
        <translation>eine endliche Zahl</translation>
    </message>
    <message>
        <source>a number without a unit</source>
        <translation>eine Zahl ohne Einheit</translation>
    </message>
    <message>
        <source>a number with %1</source>
        <translation>eine Zahl mit %1</translation>
    </message>
    <message>
        <source>a number of usual size (0, or 1e-15 to 1e15)</source>
        <translation>eine Zahl üblicher Größe (0 oder 1e-15 bis 1e15)</translation>
    </message>
    <message>
        <source>three numbers: x y z</source>
        <translation>drei Zahlen: x y z</translation>
    </message>
    <message>
        <source>two bounds, such as 2 .. 6, 2 .. or .. 6</source>
        <translation>zwei Grenzen, etwa 2 .. 6, 2 .. oder .. 6</translation>
    </message>
    <message>
        <source>a lower bound that isn&apos;t above the upper one</source>
        <translation>eine untere Grenze, die nicht über der oberen liegt</translation>
    </message>
    <message>
        <source>%1 or %2</source>
        <translation>%1 oder %2</translation>
    </message>
    <message>
        <source>found %1, expected %2</source>
        <translation>gefunden: %1, erwartet: %2</translation>
    </message>
    <message>
        <source>%1; the nearest is %2</source>
        <translation>%1; am nächsten liegt %2</translation>
    </message>
    <message>
        <source>a time of at most %1</source>
        <translation>eine Zeit von höchstens %1</translation>
    </message>
</context>
<context>
    <name>Severity</name>
    <message>
        <source>ok</source>
        <translation>ok</translation>
    </message>
    <message>
        <source>fail</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>warning</source>
        <translation>Warnung</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Hinweis</translation>
    </message>
</context>
<context>
    <name>TraceView</name>
    <message>
        <source>current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>voltage</source>
        <translation>Spannung</translation>
    </message>
    <message>
        <source>wire feed</source>
        <translation>Drahtvorschub</translation>
    </message>
    <message>
        <source>travel</source>
        <translation>Fahrt</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::CellPage</name>
    <message>
        <source>Cell</source>
        <translation>Zelle</translation>
    </message>
    <message>
        <source>A planned timeline is no proof that a robot&apos;s motion is safe: the cell&apos;s safeguards follow ISO 10218 and local law.</source>
        <translation>Ein geplanter Zeitablauf beweist nicht, dass eine Roboterbewegung sicher ist: Schutz der Zelle nach ISO 10218 und örtlichem Recht.</translation>
    </message>
    <message>
        <source>What the cycle is made of</source>
        <translation>Woraus die Taktzeit besteht</translation>
    </message>
    <message>
        <source>Moves of the robots</source>
        <translation>Bewegungen der Roboter</translation>
    </message>
    <message>
        <source>Seams in welding order</source>
        <translation>Nähte in Schweißfolge</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>Whole cycle</source>
        <translation>Ganzer Ablauf</translation>
    </message>
    <message>
        <source>Shows the timeline from end to end (Home)</source>
        <translation>Zeigt den Ablauf von Anfang bis Ende (Pos1)</translation>
    </message>
    <message>
        <source>%1: %3 no. %2</source>
        <translation>%1: %3 Nr. %2</translation>
    </message>
    <message>
        <source>place in the robot&apos;s order</source>
        <translation>Platz in der Folge des Roboters</translation>
    </message>
    <message>
        <source>The cell&apos;s robots are not described in this plan. The demo shows a cell of two robots.</source>
        <translation>Dieser Plan beschreibt keine Roboter. Das Beispiel zeigt eine Zelle mit zweien.</translation>
    </message>
    <message>
        <source>cycle %1, arc on %2 %</source>
        <translation>Taktzeit %1, Lichtbogen %2 %</translation>
    </message>
    <message>
        <source>, %1 under takt</source>
        <translation>, %1 unter Takt</translation>
    </message>
    <message>
        <source>, %1 over takt</source>
        <translation>, %1 über Takt</translation>
    </message>
    <message>
        <source>Robot that is out</source>
        <translation>Ausgefallener Roboter</translation>
    </message>
    <message>
        <source>What the cell does without one of its robots: its seams go to others, or to hands</source>
        <translation>Was die Zelle ohne einen Roboter tut: seine Nähte gehen an andere oder an die Hand</translation>
    </message>
    <message>
        <source>all robots</source>
        <translation>alle Roboter</translation>
    </message>
    <message>
        <source>without %1</source>
        <translation>ohne %1</translation>
    </message>
    <message>
        <source>Without %1: %2 seams go to another robot; %3</source>
        <translation>Ohne %1: %2 Nähte gehen an einen anderen Roboter; %3</translation>
    </message>
    <message>
        <source>none is left to hands.</source>
        <translation>keine bleibt für die Hand.</translation>
    </message>
    <message>
        <source>nobody reaches %1: by hand, or they wait.</source>
        <translation>niemand erreicht %1: von Hand, oder sie warten.</translation>
    </message>
    <message>
        <source>Timeline that it is compared with</source>
        <translation>Zeitplan, mit dem verglichen wird</translation>
    </message>
    <message>
        <source>This plan</source>
        <translation>Dieser Plan</translation>
    </message>
    <message>
        <source>, %1: no margin</source>
        <translation>, %1: kein Abstand zum Takt</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::ChainStrip</name>
    <message>
        <source>Chain</source>
        <translation>Kette</translation>
    </message>
    <message>
        <source>Seams</source>
        <translation>Nähte</translation>
    </message>
    <message>
        <source>Schedules</source>
        <translation>Schweißpläne</translation>
    </message>
    <message>
        <source>Heat</source>
        <translation>Wärme</translation>
    </message>
    <message>
        <source>Cell</source>
        <translation>Zelle</translation>
    </message>
    <message>
        <source>Line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Protokolle</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::CycleTable</name>
    <message>
        <source>Part of the cycle</source>
        <translation>Teil der Taktzeit</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Sum over all robots</source>
        <translation>Summe über alle Roboter</translation>
    </message>
    <message>
        <source>Compared</source>
        <translation>Verglichen</translation>
    </message>
    <message>
        <source>The same of what it is compared with</source>
        <translation>Dasselbe vom Verglichenen</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>From this cycle to the compared one</source>
        <translation>Von dieser Taktzeit zur verglichenen</translation>
    </message>
    <message>
        <source>Cycle</source>
        <translation>Taktzeit</translation>
    </message>
    <message>
        <source>Robot</source>
        <translation>Roboter</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>To</source>
        <translation>Bis</translation>
    </message>
    <message>
        <source>Move</source>
        <translation>Bewegung</translation>
    </message>
    <message>
        <source>Seam</source>
        <translation>Naht</translation>
    </message>
    <message>
        <source>Pass</source>
        <translation>Lage</translation>
    </message>
    <message>
        <source>cell</source>
        <translation>Zelle</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::Difference</name>
    <message>
        <source>Field</source>
        <translation>Feld</translation>
    </message>
    <message>
        <source>This schedule</source>
        <translation>Dieser Plan</translation>
    </message>
    <message>
        <source>Compared with</source>
        <translation>Verglichen mit</translation>
    </message>
    <message>
        <source>Weave: </source>
        <translation>Pendeln: </translation>
    </message>
    <message>
        <source>Use: </source>
        <translation>Einsatz: </translation>
    </message>
    <message>
        <source>Limit: </source>
        <translation>Grenze: </translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::Document</name>
    <message>
        <source>New plan</source>
        <translation>Neuer Plan</translation>
    </message>
    <message>
        <source>Change %1</source>
        <translation>%1 ändern</translation>
    </message>
    <message>
        <source>there is no such field</source>
        <translation>dieses Feld gibt es nicht</translation>
    </message>
    <message>
        <source>Locked: %1. Withdraw the approval first.</source>
        <translation>Gesperrt: %1. Zuerst ist die Freigabe zurückzunehmen.</translation>
    </message>
    <message>
        <source>Locked: %1. The change may go into a new revision.</source>
        <translation>Gesperrt: %1. Die Änderung kann in eine neue Ausgabe.</translation>
    </message>
    <message>
        <source>Locked: %1, until someone withdraws the approval.</source>
        <translation>Gesperrt: %1, bis jemand die Freigabe zurücknimmt.</translation>
    </message>
    <message>
        <source>Used by locked schedules: %1. The change may go into a copy.</source>
        <translation>Von gesperrten Schweißplänen benutzt: %1. Die Änderung kann in eine Kopie.</translation>
    </message>
    <message>
        <source>Nothing is changed. %1, %2: %3</source>
        <translation>Nichts ist geändert. %1, %2: %3</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::ExplainPanel</name>
    <message>
        <source>Explain</source>
        <translation>Erklären</translation>
    </message>
    <message>
        <source>Close Explain</source>
        <translation>Erklärung schließen</translation>
    </message>
    <message>
        <source>Close (F1)</source>
        <translation>Schließen (F1)</translation>
    </message>
    <message>
        <source>Explanation</source>
        <translation>Erklärung</translation>
    </message>
    <message>
        <source>Choose a derived value, such as a leg obtained or a cooling time: here stand its formula, the numbers put in, the source and where it holds.</source>
        <translation>Einen abgeleiteten Wert wählen, etwa einen erreichten Schenkel oder eine Abkühlzeit: hier stehen Formel, eingesetzte Zahlen, Quelle und Geltungsbereich.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::FieldCell</name>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::Figures</name>
    <message>
        <source>%1 seams</source>
        <translation>%1 Nähte</translation>
    </message>
    <message>
        <source>%1 fail</source>
        <translation>%1 Fehler</translation>
    </message>
    <message>
        <source>%1 schedules</source>
        <translation>%1 Pläne</translation>
    </message>
    <message>
        <source>%1 not approved</source>
        <translation>%1 nicht frei</translation>
    </message>
    <message>
        <source>of %1, %2</source>
        <translation>von %1, %2</translation>
    </message>
    <message>
        <source>takt</source>
        <translation>Takt</translation>
    </message>
    <message>
        <source>%1 warn, %2 notes</source>
        <translation>%1 Warn., %2 Hinw.</translation>
    </message>
    <message>
        <source>%1 unwelded</source>
        <translation>%1 ungeschweißt</translation>
    </message>
    <message>
        <source>%1 of %2 robot seams unwelded</source>
        <translation>%1 von %2 Roboternähten ungeschweißt</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::FindingList</name>
    <message>
        <source>Findings of this page</source>
        <translation>Befunde dieser Seite</translation>
    </message>
    <message>
        <source>No findings here</source>
        <translation>Hier keine Befunde</translation>
    </message>
    <message>
        <source>Findings: %1 fail, %2 warnings, %3 notes</source>
        <translation>Befunde: %1 Fehler, %2 Warnungen, %3 Hinweise</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::FindingModel</name>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>fail: a limit is not kept; warning: look at it; note: good to know</source>
        <translation>Fehler: eine Grenze ist verletzt; Warnung: ansehen; Hinweis: gut zu wissen</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Weldment, seam and pass</source>
        <translation>Bauteil, Naht und Lage</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>What was found</source>
        <translation>Was gefunden wurde</translation>
    </message>
    <message>
        <source>Limit</source>
        <translation>Grenze</translation>
    </message>
    <message>
        <source>What it is judged against</source>
        <translation>Woran er gemessen wird</translation>
    </message>
    <message>
        <source>Rule</source>
        <translation>Regel</translation>
    </message>
    <message>
        <source>Stable name of the rule</source>
        <translation>Fester Name der Regel</translation>
    </message>
    <message>
        <source>Source</source>
        <translation>Quelle</translation>
    </message>
    <message>
        <source>Standard and clause</source>
        <translation>Norm und Abschnitt</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::FindingsPage</name>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>A finding is accepted by a person, with name, day and reason; it stays in the plan and in its reports.</source>
        <translation>Einen Befund nimmt ein Mensch an, mit Name, Tag und Grund; das bleibt im Plan und in seinen Berichten.</translation>
    </message>
    <message>
        <source>Severity shown</source>
        <translation>Gezeigte Schwere</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>Words, seam or rule</source>
        <translation>Worte, Naht oder Regel</translation>
    </message>
    <message>
        <source>Filter findings</source>
        <translation>Befunde filtern</translation>
    </message>
    <message>
        <source>Enter goes to the field</source>
        <translation>Eingabe führt zum Feld</translation>
    </message>
    <message>
        <source>Go to the field</source>
        <translation>Zum Feld</translation>
    </message>
    <message>
        <source>Accept this finding</source>
        <translation>Befund annehmen</translation>
    </message>
    <message>
        <source>Reason</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>why the limit may be passed here</source>
        <translation>warum das hier zulässig ist</translation>
    </message>
    <message>
        <source>Accepted by</source>
        <translation>Angenommen von</translation>
    </message>
    <message>
        <source>name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Accept with this reason</source>
        <translation>Mit diesem Grund annehmen</translation>
    </message>
    <message>
        <source>Choose a finding to see what it says.</source>
        <translation>Einen Befund wählen, um ihn zu lesen.</translation>
    </message>
    <message>
        <source>%1 against %2</source>
        <translation>%1 gegen %2</translation>
    </message>
    <message>
        <source>%1
Rule %2
Source: %3</source>
        <translation>%1
Regel %2
Quelle: %3</translation>
    </message>
    <message>
        <source>found nothing, expected a reason and a name</source>
        <translation>nichts gefunden; erwartet: Grund und Name</translation>
    </message>
    <message>
        <source>This finding is accepted already.</source>
        <translation>Dieser Befund ist schon angenommen.</translation>
    </message>
    <message>
        <source>Accept finding</source>
        <translation>Befund annehmen</translation>
    </message>
    <message>
        <source>Accepted: %1</source>
        <translation>Angenommen: %1</translation>
    </message>
    <message>
        <source>Findings come from a plan: open the demo to see some.</source>
        <translation>Befunde entstehen aus einem Plan: das Beispiel zeigt welche.</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>Source</source>
        <translation>Quelle</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::GridView</name>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>Nothing is changed: what was copied is larger than the table from here on</source>
        <translation>Nichts ist geändert: Das Kopierte ist größer als die Tabelle ab hier</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::HeatPage</name>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Heat</source>
        <translation>Wärme</translation>
    </message>
    <message>
        <source>Cooling times and hardness are estimates from formulas: the procedure test decides. The field shows one plate with constant properties.</source>
        <translation>Abkühlzeit und Härte sind Schätzungen aus Formeln: die Verfahrensprüfung entscheidet. Das Feld zeigt ein Blech mit festen Stoffwerten.</translation>
    </message>
    <message>
        <source>Heat of each pass</source>
        <translation>Wärme je Lage</translation>
    </message>
    <message>
        <source>Views of heat</source>
        <translation>Ansichten der Wärme</translation>
    </message>
    <message>
        <source>Operating window</source>
        <translation>Arbeitsfenster</translation>
    </message>
    <message>
        <source>Points beside the seam</source>
        <translation>Punkte neben der Naht</translation>
    </message>
    <message>
        <source>Distances from the seam&apos;s middle, separated by semicolons; a click on the map adds one</source>
        <translation>Abstände von der Nahtmitte, durch Strichpunkte getrennt; ein Klick ins Bild fügt einen hinzu</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>Heat follows from seams and their schedules: open the demo, or give a seam a schedule.</source>
        <translation>Wärme folgt aus Nähten und Schweißplänen: das Beispiel öffnen oder einer Naht einen Plan geben.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::IndividualsPlot</name>
    <message>
        <source>%1: passes in order</source>
        <translation>%1: Lagen der Reihe nach</translation>
    </message>
    <message>
        <source>Control chart</source>
        <translation>Regelkarte</translation>
    </message>
    <message>
        <source>Values pass by pass. Dashed: the schedule&apos;s limits. Line: mean. Dots and dashes: control limits, three sigma about the mean. Ring: the value completes a pattern that chance rarely makes.</source>
        <translation>Werte Lage für Lage. Gestrichelt: Grenzen des Schweißplans. Linie: Mittel. Strichpunkt: Eingriffsgrenzen, drei Sigma um das Mittel. Ring: Der Wert schließt ein Muster ab, das der Zufall selten bildet.</translation>
    </message>
    <message>
        <source>lower limit</source>
        <translation>untere Grenze</translation>
    </message>
    <message>
        <source>upper limit</source>
        <translation>obere Grenze</translation>
    </message>
    <message>
        <source>mean</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>mean − 3 σ</source>
        <translation>Mittel − 3 σ</translation>
    </message>
    <message>
        <source>mean + 3 σ</source>
        <translation>Mittel + 3 σ</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::LinePage</name>
    <message>
        <source>Line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>Stages</source>
        <translation>Stufen</translation>
    </message>
    <message>
        <source>Fields of the stage</source>
        <translation>Felder der Stufe</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>A line is its takt and its stages. This plan names none; the demo shows one.</source>
        <translation>Eine Linie ist ihr Takt und ihre Stufen. Dieser Plan nennt keine; das Beispiel zeigt eine.</translation>
    </message>
    <message>
        <source>Takt</source>
        <translation>Takt</translation>
    </message>
    <message>
        <source>Times are planned ones and chance is drawn: what the line does is measured at the line.</source>
        <translation>Geplante Zeiten, Zufall gezogen: was die Linie tut, wird an der Linie gemessen.</translation>
    </message>
    <message>
        <source>Tables of the line</source>
        <translation>Tabellen der Linie</translation>
    </message>
    <message>
        <source>Units of the day</source>
        <translation>Einheiten des Tages</translation>
    </message>
    <message>
        <source>What would help</source>
        <translation>Was helfen würde</translation>
    </message>
    <message>
        <source>Takt and stages</source>
        <translation>Takt und Stufen</translation>
    </message>
    <message>
        <source>Read orders …</source>
        <translation>Aufträge einlesen …</translation>
    </message>
    <message>
        <source>A table with unit_serial, weldment and due</source>
        <translation>Eine Tabelle mit unit_serial, weldment und due</translation>
    </message>
    <message>
        <source>Read orders</source>
        <translation>Aufträge einlesen</translation>
    </message>
    <message>
        <source>Tables (*.csv);;All files (*)</source>
        <translation>Tabellen (*.csv);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Carts …</source>
        <translation>Wagen …</translation>
    </message>
    <message>
        <source>A folder with one cart a unit, SERIAL.csv: only complete units are released</source>
        <translation>Ein Ordner mit einem Wagen je Einheit, SERIAL.csv: nur vollständige werden freigegeben</translation>
    </message>
    <message>
        <source>Folder of carts</source>
        <translation>Ordner der Wagen</translation>
    </message>
    <message>
        <source>Demo orders</source>
        <translation>Beispielaufträge</translation>
    </message>
    <message>
        <source>The orders that belong to the demo plan</source>
        <translation>Die Aufträge zum Beispielplan</translation>
    </message>
    <message>
        <source>Level the sequence</source>
        <translation>Folge glätten</translation>
    </message>
    <message>
        <source>Re-sequences the orders; due dates are kept</source>
        <translation>Ordnet die Aufträge neu; Termine bleiben gewahrt</translation>
    </message>
    <message>
        <source>working …</source>
        <translation>rechnet …</translation>
    </message>
    <message>
        <source>, %1 takt misses</source>
        <translation>, %1 Taktverluste</translation>
    </message>
    <message>
        <source> (levelled: %1 before, %2 after, mean)</source>
        <translation> (geglättet: vorher %1, nachher %2, Mittel)</translation>
    </message>
    <message>
        <source>, %1 units wait</source>
        <translation>, %1 Einheiten warten</translation>
    </message>
    <message>
        <source>%1 units/h</source>
        <translation>%1 Einh./h</translation>
    </message>
    <message>
        <source>%1 missed</source>
        <translation>%1 verpasst</translation>
    </message>
    <message>
        <source>%1 of %2 units aren&apos;t run: seams of theirs are unwelded. </source>
        <translation>%1 von %2 Einheiten laufen nicht: Nähte davon sind ungeschweißt. </translation>
    </message>
    <message>
        <source>No unit is run.</source>
        <translation>Keine Einheit läuft.</translation>
    </message>
    <message>
        <source>%1 units, %2 units/h</source>
        <translation>%1 Einheiten, %2 Einheiten/h</translation>
    </message>
    <message>
        <source> (nothing is left to chance)</source>
        <translation> (nichts bleibt dem Zufall überlassen)</translation>
    </message>
    <message>
        <source> (one draw, seed %1)</source>
        <translation> (eine Ziehung, Startwert %1)</translation>
    </message>
    <message>
        <source> (mean of %1 runs, 8 of 10 from %2 to %3)</source>
        <translation> (Mittel von %1 Läufen, 8 von 10 von %2 bis %3)</translation>
    </message>
    <message>
        <source>, bottleneck %1</source>
        <translation>, Engpass %1</translation>
    </message>
    <message>
        <source>%1 of %2 not run</source>
        <translation>%1 von %2 laufen nicht</translation>
    </message>
    <message>
        <source>one draw, seed %1</source>
        <translation>eine Ziehung, Startwert %1</translation>
    </message>
    <message>
        <source>Tables and picture are of one draw of %1, the one in the middle by throughput: seed %2.</source>
        <translation>Tabellen und Bild zeigen eine Ziehung von %1, die mittlere nach Durchsatz: Startwert %2.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::LineTable</name>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>Due</source>
        <translation>Termin</translation>
    </message>
    <message>
        <source>In</source>
        <translation>Hinein</translation>
    </message>
    <message>
        <source>Out</source>
        <translation>Heraus</translation>
    </message>
    <message>
        <source>Remark</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>missed takt: %1</source>
        <translation>Takt verfehlt: %1</translation>
    </message>
    <message>
        <source>reworked</source>
        <translation>nachgearbeitet</translation>
    </message>
    <message>
        <source>scrap</source>
        <translation>Ausschuss</translation>
    </message>
    <message>
        <source>late</source>
        <translation>spät</translation>
    </message>
    <message>
        <source>in takt</source>
        <translation>im Takt</translation>
    </message>
    <message>
        <source>; released instead: %1</source>
        <translation>; statt dessen freigegeben: %1</translation>
    </message>
    <message>
        <source>waits</source>
        <translation>wartet</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>What if</source>
        <translation>Was wäre, wenn</translation>
    </message>
    <message>
        <source>Units/h more</source>
        <translation>Einheiten/h mehr</translation>
    </message>
    <message>
        <source>Change of throughput, mean of the runs</source>
        <translation>Änderung des Durchsatzes, Mittel der Läufe</translation>
    </message>
    <message>
        <source>± (1 SE)</source>
        <translation>± (1 SE)</translation>
    </message>
    <message>
        <source>Standard error of the change: both lines meet the same luck</source>
        <translation>Standardfehler der Änderung: beide Linien haben dasselbe Glück</translation>
    </message>
    <message>
        <source>Takt misses</source>
        <translation>Taktverluste</translation>
    </message>
    <message>
        <source>Change of takt misses, mean of the runs</source>
        <translation>Änderung der Taktverluste, Mittel der Läufe</translation>
    </message>
    <message>
        <source>not run</source>
        <translation>läuft nicht</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::LineView</name>
    <message>
        <source>busy</source>
        <translation>arbeitet</translation>
    </message>
    <message>
        <source>stopped</source>
        <translation>steht</translation>
    </message>
    <message>
        <source>blocked</source>
        <translation>blockiert</translation>
    </message>
    <message>
        <source>starved</source>
        <translation>ohne Teil</translation>
    </message>
    <message>
        <source>Stages of the line and departures against takt</source>
        <translation>Stufen der Linie und Abgänge gegen Takt</translation>
    </message>
    <message>
        <source>The tables of units and stages say the same in words.</source>
        <translation>Die Tabellen sagen dasselbe in Worten.</translation>
    </message>
    <message>
        <source>takt %1</source>
        <translation>Takt %1</translation>
    </message>
    <message>
        <source>units as they leave; bar: time since the one before; dotted: takt missed</source>
        <translation>Einheiten in der Folge ihres Abgangs; Balken: Zeit seit der vorigen; punktiert: Takt verfehlt</translation>
    </message>
    <message>
        <source>Read the day&apos;s orders to see what the line makes of them.</source>
        <translation>Die Aufträge des Tages einlesen, um zu sehen, was die Linie daraus macht.</translation>
    </message>
    <message>
        <source>one draw of %1, seed %2</source>
        <translation>eine Ziehung von %1, Startwert %2</translation>
    </message>
    <message>
        <source>No unit is run.</source>
        <translation>Keine Einheit läuft.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::MainWindow</name>
    <message>
        <source>Seamtakt desk</source>
        <translation>Seamtakt</translation>
    </message>
    <message>
        <source>working …</source>
        <translation>rechnet …</translation>
    </message>
    <message>
        <source>up to date</source>
        <translation>aktuell</translation>
    </message>
    <message>
        <source>This finding is about the plan as a whole.</source>
        <translation>Dieser Befund betrifft den ganzen Plan.</translation>
    </message>
    <message>
        <source>The plan can&apos;t be opened</source>
        <translation>Der Plan lässt sich nicht öffnen</translation>
    </message>
    <message>
        <source>Open plan</source>
        <translation>Plan öffnen</translation>
    </message>
    <message>
        <source>Plans (*.weldplan.json);;All files (*)</source>
        <translation>Pläne (*.weldplan.json);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>The demo is a copy: saving asks for a name.</source>
        <translation>Das Beispiel ist eine Kopie: Sichern fragt nach einem Namen.</translation>
    </message>
    <message>
        <source>The demo can&apos;t be opened: %1</source>
        <translation>Das Beispiel lässt sich nicht öffnen: %1</translation>
    </message>
    <message>
        <source>Saved</source>
        <translation>Gesichert</translation>
    </message>
    <message>
        <source>Changed on disk</source>
        <translation>Auf der Platte geändert</translation>
    </message>
    <message>
        <source>%1

Someone else changed the file since it was opened. Write over it? The file as it stands is kept with a ~ at its name.</source>
        <translation>%1

Jemand anders hat die Datei seit dem Öffnen geändert. Überschreiben? Die jetzige Datei bleibt mit ~ am Namen erhalten.</translation>
    </message>
    <message>
        <source>Not saved</source>
        <translation>Nicht gesichert</translation>
    </message>
    <message>
        <source>The plan was not saved: %1
The file as it was is still there.</source>
        <translation>Der Plan wurde nicht gesichert: %1
Die bisherige Datei ist noch da.</translation>
    </message>
    <message>
        <source>Save plan as</source>
        <translation>Plan sichern unter</translation>
    </message>
    <message>
        <source>Plans (*.weldplan.json)</source>
        <translation>Pläne (*.weldplan.json)</translation>
    </message>
    <message>
        <source>⚠ %1 was changed on disk by someone else. Saving asks before it writes over it.</source>
        <translation>⚠ %1 wurde von jemand anderem geändert. Sichern fragt vor dem Überschreiben.</translation>
    </message>
    <message>
        <source>Unsaved changes</source>
        <translation>Ungesicherte Änderungen</translation>
    </message>
    <message>
        <source>“%1” has changes that aren&apos;t saved.</source>
        <translation>„%1“ hat ungesicherte Änderungen.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Sichern</translation>
    </message>
    <message>
        <source>Drop the changes</source>
        <translation>Änderungen verwerfen</translation>
    </message>
    <message>
        <source>Stay</source>
        <translation>Bleiben</translation>
    </message>
    <message>
        <source>a new plan</source>
        <translation>einem neuen Plan</translation>
    </message>
    <message>
        <source>Recover unsaved edits</source>
        <translation>Ungesicherte Änderungen</translation>
    </message>
    <message>
        <source>The desk ended without saving edits of %1. Take them up again?</source>
        <translation>Änderungen an %1 wurden nicht gesichert. Wieder aufnehmen?</translation>
    </message>
    <message>
        <source>Recovered: look it over and save.</source>
        <translation>Wiederhergestellt: ansehen und sichern.</translation>
    </message>
    <message>
        <source>What was kept can&apos;t be read: %1</source>
        <translation>Das Aufgehobene ist nicht lesbar: %1</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;New plan</source>
        <translation>&amp;Neuer Plan</translation>
    </message>
    <message>
        <source>&amp;Open plan …</source>
        <translation>Plan ö&amp;ffnen …</translation>
    </message>
    <message>
        <source>&amp;Recent plans</source>
        <translation>&amp;Zuletzt geöffnet</translation>
    </message>
    <message>
        <source>Open the &amp;demo</source>
        <translation>&amp;Beispiel öffnen</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Sichern</translation>
    </message>
    <message>
        <source>Save &amp;as …</source>
        <translation>Sichern &amp;unter …</translation>
    </message>
    <message>
        <source>&amp;Import log …</source>
        <translation>Protokoll e&amp;inlesen …</translation>
    </message>
    <message>
        <source>Import log</source>
        <translation>Protokoll einlesen</translation>
    </message>
    <message>
        <source>Arc logs (*.csv *.csv.gz *.gz *.txt);;All files (*)</source>
        <translation>Lichtbogenprotokolle (*.csv *.csv.gz *.gz *.txt);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Report as &amp;PDF …</source>
        <translation>Bericht als &amp;PDF …</translation>
    </message>
    <message>
        <source>Report as &amp;HTML …</source>
        <translation>Bericht als &amp;HTML …</translation>
    </message>
    <message>
        <source>Pre&amp;view and print report …</source>
        <translation>Bericht &amp;ansehen und drucken …</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>B&amp;eenden</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig:</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen:</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>E&amp;xplain</source>
        <translation>E&amp;rklären</translation>
    </message>
    <message>
        <source>&amp;SI units</source>
        <translation>&amp;SI-Einheiten</translation>
    </message>
    <message>
        <source>&amp;US units</source>
        <translation>&amp;US-Einheiten</translation>
    </message>
    <message>
        <source>Other &amp;units</source>
        <translation>Andere &amp;Einheiten</translation>
    </message>
    <message>
        <source>Colours of the system</source>
        <translation>Farben des Systems</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation>&amp;Tasten</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Ctrl+1 … Ctrl+7: the links of the chain and the findings
F1: Explain the value in focus
F2 or typing: edit a cell
Enter on a finding: go to its field
Arrow up and down in a number: step; Page up and down: ten steps
Ctrl+C, Ctrl+V: a range of a table, to and from a spreadsheet
Ctrl+Z, Ctrl+Y: undo, redo
Ctrl+U: SI or US units
Ctrl+I: import a log; Ctrl+E: report as PDF
F6: next part of the page</source>
        <translation>Strg+1 … Strg+7: Glieder der Kette und Befunde
F1: den Wert erklären
F2 oder Tippen: Zelle bearbeiten
Eingabe auf einem Befund: zu seinem Feld
Pfeil auf und ab in einer Zahl: ein Schritt; Bild auf und ab: zehn
Strg+C, Strg+V: Bereich einer Tabelle
Strg+Z, Strg+Y: rückgängig, wiederholen
Strg+U: SI- oder US-Einheiten
Strg+I: Protokoll einlesen; Strg+E: Bericht als PDF
F6: nächster Teil der Seite</translation>
    </message>
    <message>
        <source>&amp;About Seamtakt</source>
        <translation>Ü&amp;ber Seamtakt</translation>
    </message>
    <message>
        <source>About Seamtakt</source>
        <translation>Über Seamtakt</translation>
    </message>
    <message>
        <source>&lt;h3&gt;Seamtakt %1&lt;/h3&gt;&lt;p&gt;Plans robot weld cells: from the drawing&apos;s fillet to takt and to the audited arc log.&lt;/p&gt;&lt;p&gt;%2&lt;/p&gt;&lt;p&gt;GPL-3.0-or-later. With Qt (LGPL-3), QCustomPlot (GPL-3), Eigen (MPL-2.0), SQLite (public domain), OpenSSL (Apache-2.0), zlib.&lt;/p&gt;</source>
        <translation>&lt;h3&gt;Seamtakt %1&lt;/h3&gt;&lt;p&gt;Plant Roboter-Schweißzellen: von der Kehlnaht der Zeichnung über den Takt bis zum geprüften Lichtbogenprotokoll.&lt;/p&gt;&lt;p&gt;%2&lt;/p&gt;&lt;p&gt;GPL-3.0-or-later. Mit Qt (LGPL-3), QCustomPlot (GPL-3), Eigen (MPL-2.0), SQLite (gemeinfrei), OpenSSL (Apache-2.0), zlib.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>About &amp;Qt</source>
        <translation>Über &amp;Qt</translation>
    </message>
    <message>
        <source>No plan was opened yet</source>
        <translation>Noch kein Plan geöffnet</translation>
    </message>
    <message>
        <source>Report as PDF</source>
        <translation>Bericht als PDF</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>Report written to %1</source>
        <translation>Bericht geschrieben: %1</translation>
    </message>
    <message>
        <source>Not written</source>
        <translation>Nicht geschrieben</translation>
    </message>
    <message>
        <source>Report as HTML</source>
        <translation>Bericht als HTML</translation>
    </message>
    <message>
        <source>HTML (*.html)</source>
        <translation>HTML (*.html)</translation>
    </message>
    <message>
        <source>Plan &amp;data …</source>
        <translation>Plan&amp;daten …</translation>
    </message>
    <message>
        <source>Next &amp;part</source>
        <translation>Nächster &amp;Teil</translation>
    </message>
    <message>
        <source>Report of the unit</source>
        <translation>Bericht der Einheit</translation>
    </message>
    <message>
        <source>The plan has changed meanwhile: nothing is done.</source>
        <translation>Der Plan hat sich inzwischen geändert: Nichts ist geschehen.</translation>
    </message>
    <message>
        <source>%1 stays as it is. The change goes into revision %2 as a draft, %3.</source>
        <translation>%1 bleibt, wie es ist. Die Änderung kommt in Ausgabe %2 als Entwurf, %3.</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>New revision</source>
        <translation>Neue Ausgabe</translation>
    </message>
    <message>
        <source>%1 is a draft; %2 stays as it is.</source>
        <translation>%1 ist ein Entwurf; %2 bleibt, wie es ist.</translation>
    </message>
    <message>
        <source>Withdraw approval</source>
        <translation>Freigabe zurücknehmen</translation>
    </message>
    <message>
        <source>Withdraw the approval of %1? It can be changed then; who approved it and from when is taken out. Seams welded by it: %2.</source>
        <translation>Die Freigabe von %1 zurücknehmen? Dann ist eine Änderung möglich; wer freigegeben hat und ab wann, wird entfernt. Damit geschweißte Nähte: %2.</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>Withdraw</source>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
    <message>
        <source>Copy with the change</source>
        <translation>Kopie mit der Änderung</translation>
    </message>
    <message>
        <source>Locked schedules are welded with it and stay as they are: %1. The change may go into a copy, %2, which a new revision can name.</source>
        <translation>Damit wird nach gesperrten Schweißplänen geschweißt, die bleiben, wie sie sind: %1. Die Änderung kann in eine Kopie, %2, die eine neue Ausgabe nennen kann.</translation>
    </message>
    <message>
        <source>Recover</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Später</translation>
    </message>
    <message>
        <source>About Qt</source>
        <translation>Über Qt</translation>
    </message>
    <message>
        <source>This program uses Qt %1, under the GNU Lesser General Public License, version 3. Qt is at https://www.qt.io.</source>
        <translation>Dieses Programm verwendet Qt %1 unter der GNU Lesser General Public License, Version 3. Qt findet sich unter https://www.qt.io.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::OrderBar</name>
    <message>
        <source>best %1, bound %2, gap %3 %, %4 s</source>
        <translation>beste %1, Schranke %2, Abstand %3 %, %4 s</translation>
    </message>
    <message>
        <source>Earlier</source>
        <translation>Früher</translation>
    </message>
    <message>
        <source>Welds the chosen seam one place earlier</source>
        <translation>Schweißt die gewählte Naht einen Platz früher</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Später</translation>
    </message>
    <message>
        <source>Welds the chosen seam one place later</source>
        <translation>Schweißt die gewählte Naht einen Platz später</translation>
    </message>
    <message>
        <source>Other robot</source>
        <translation>Anderer Roboter</translation>
    </message>
    <message>
        <source>Gives the chosen seam to the next robot that reaches it</source>
        <translation>Gibt die gewählte Naht dem nächsten Roboter, der sie erreicht</translation>
    </message>
    <message>
        <source>Search for the best order</source>
        <translation>Suche nach der besten Reihenfolge</translation>
    </message>
    <message>
        <source>Search best order</source>
        <translation>Beste Reihenfolge suchen</translation>
    </message>
    <message>
        <source>Searches order, robots and directions of the shortest cycle until you stop it</source>
        <translation>Sucht Reihenfolge, Roboter und Richtungen der kürzesten Taktzeit, bis Sie anhalten</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Halt</translation>
    </message>
    <message>
        <source>Ends the search; the best order found is kept</source>
        <translation>Beendet die Suche; die beste gefundene Reihenfolge bleibt</translation>
    </message>
    <message>
        <source>Take it over</source>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>Makes the order that was found the plan&apos;s, as one step of undo</source>
        <translation>Macht die gefundene Reihenfolge zu der des Plans, rückgängig in einem Schritt</translation>
    </message>
    <message>
        <source>Compare …</source>
        <translation>Vergleichen …</translation>
    </message>
    <message>
        <source>Compares with the same weldment of another plan file</source>
        <translation>Vergleicht mit demselben Bauteil einer anderen Plandatei</translation>
    </message>
    <message>
        <source>Compare with plan</source>
        <translation>Mit Plan vergleichen</translation>
    </message>
    <message>
        <source>Plans (*.weldplan.json);;All files (*)</source>
        <translation>Pläne (*.weldplan.json);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Close comparison</source>
        <translation>Vergleich schließen</translation>
    </message>
    <message>
        <source>Shows the cycle alone again</source>
        <translation>Zeigt die Taktzeit wieder allein</translation>
    </message>
    <message>
        <source>%1: no. %2 of %3 on %4</source>
        <translation>%1: Nr. %2 von %3 auf %4</translation>
    </message>
    <message>
        <source>searching …</source>
        <translation>sucht …</translation>
    </message>
    <message>
        <source>Best order found</source>
        <translation>Beste gefundene Reihenfolge</translation>
    </message>
    <message>
        <source>%1 against %2, gap %3 %</source>
        <translation>%1 gegen %2, Abstand %3 %</translation>
    </message>
    <message>
        <source>Take over the best order</source>
        <translation>Beste Reihenfolge übernehmen</translation>
    </message>
    <message>
        <source>The order is the plan&apos;s: cycle %1. Undo brings back the one before.</source>
        <translation>Die Reihenfolge ist die des Plans: Taktzeit %1. Rückgängig holt die vorige zurück.</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>%1 has no weldment %2 in a cell.</source>
        <translation>%1 hat kein Bauteil %2 in einer Zelle.</translation>
    </message>
    <message>
        <source>Move %1</source>
        <translation>%1 verschieben</translation>
    </message>
    <message>
        <source>%1 can&apos;t go there: %2</source>
        <translation>%1 kann dort nicht hin: %2</translation>
    </message>
    <message>
        <source>%1: last on %2</source>
        <translation>%1: zuletzt auf %2</translation>
    </message>
    <message>
        <source>%1: before %2 on %3</source>
        <translation>%1: vor %2 auf %3</translation>
    </message>
    <message>
        <source>; cycle %1 (%2)</source>
        <translation>; Taktzeit %1 (%2)</translation>
    </message>
    <message>
        <source>; refused: expected %1</source>
        <translation>; abgelehnt: erwartet %1</translation>
    </message>
    <message>
        <source>Only %1 reaches %2.</source>
        <translation>Nur %1 erreicht %2.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::Page</name>
    <message>
        <source>Open the demo</source>
        <translation>Beispiel öffnen</translation>
    </message>
    <message>
        <source>New plan</source>
        <translation>Neuer Plan</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::PlanDataDialog</name>
    <message>
        <source>Fields</source>
        <translation>Felder</translation>
    </message>
    <message>
        <source>Plan data</source>
        <translation>Plandaten</translation>
    </message>
    <message>
        <source>Duplicate</source>
        <translation>Verdoppeln</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>It can&apos;t go: %1</source>
        <translation>Das kann nicht weg: %1</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::RecordTable</name>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>not judged</source>
        <translation>nicht beurteilt</translation>
    </message>
    <message>
        <source>pass</source>
        <translation>bestanden</translation>
    </message>
    <message>
        <source>fail</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>undecided</source>
        <translation>unentschieden</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>Complete</source>
        <translation>Vollständig</translation>
    </message>
    <message>
        <source>All robot and manual passes there, each of them with verdict pass</source>
        <translation>Alle Roboter- und Handlagen da, jede bestanden</translation>
    </message>
    <message>
        <source>Passes</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>Undecided</source>
        <translation>Offen</translation>
    </message>
    <message>
        <source>Open items</source>
        <translation>Offene Punkte</translation>
    </message>
    <message>
        <source>What was welded and keeps the unit incomplete, with the number of passes by cause</source>
        <translation>Was geschweißt wurde und die Einheit unvollständig lässt, mit der Zahl der Lagen je Grund</translation>
    </message>
    <message>
        <source>Missing passes</source>
        <translation>Fehlende Lagen</translation>
    </message>
    <message>
        <source>complete</source>
        <translation>vollständig</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::RecordsPage</name>
    <message>
        <source>Records</source>
        <translation>Protokolle</translation>
    </message>
    <message>
        <source>A verdict holds for what was logged: it says nothing of what no sensor saw. Instruments must be in date.</source>
        <translation>Ein Urteil gilt für das Aufgezeichnete, nicht für das, was kein Sensor sah. Messmittel müssen gültig kalibriert sein.</translation>
    </message>
    <message>
        <source>Import stopped: nothing was taken in.</source>
        <translation>Einlesen beendet: nichts übernommen.</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>Passes of the unit</source>
        <translation>Lagen der Einheit</translation>
    </message>
    <message>
        <source>Import log …</source>
        <translation>Protokoll einlesen …</translation>
    </message>
    <message>
        <source>Reads arc logs and judges each pass by the plan (Ctrl+I)</source>
        <translation>Liest Lichtbogenprotokolle und beurteilt jede Lage nach dem Plan (Strg+I)</translation>
    </message>
    <message>
        <source>with manual seams …</source>
        <translation>mit Handnähten …</translation>
    </message>
    <message>
        <source>The same with a table of the manual seams</source>
        <translation>Dasselbe mit einer Tabelle der Handnähte</translation>
    </message>
    <message>
        <source>Demo log</source>
        <translation>Beispielprotokoll</translation>
    </message>
    <message>
        <source>Reads the log that belongs to the demo plan</source>
        <translation>Liest das Protokoll zum Beispielplan</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Halt</translation>
    </message>
    <message>
        <source>Stops the import; nothing is taken in (Esc)</source>
        <translation>Beendet das Einlesen; nichts wird übernommen (Esc)</translation>
    </message>
    <message>
        <source>Progress of the import</source>
        <translation>Fortschritt des Einlesens</translation>
    </message>
    <message>
        <source>Arc logs (*.csv *.gz *.txt);;All files (*)</source>
        <translation>Lichtbogenprotokolle (*.csv *.gz *.txt);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Import log</source>
        <translation>Protokoll einlesen</translation>
    </message>
    <message>
        <source>Manual seams</source>
        <translation>Handnähte</translation>
    </message>
    <message>
        <source>Tables (*.csv);;All files (*)</source>
        <translation>Tabellen (*.csv);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Reading %1 …</source>
        <translation>Liest %1 …</translation>
    </message>
    <message>
        <source>%1 passes; rows: %2 read = %3 in passes + %4 arc off + %5 rejected</source>
        <translation>%1 Lagen; Zeilen: %2 gelesen = %3 in Lagen + %4 ohne Lichtbogen + %5 abgewiesen</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>units complete</source>
        <translation>vollständig</translation>
    </message>
    <message>
        <source>Charts and capability</source>
        <translation>Regelkarten und Fähigkeit</translation>
    </message>
    <message>
        <source>Units and passes</source>
        <translation>Einheiten und Lagen</translation>
    </message>
    <message>
        <source>Record store</source>
        <translation>Nachweisspeicher</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>The logs were judged by another plan: import them again.</source>
        <translation>Die Protokolle wurden nach einem anderen Plan beurteilt: bitte neu einlesen.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::RevisionDialog</name>
    <message>
        <source>New revision</source>
        <translation>Neue Ausgabe</translation>
    </message>
    <message>
        <source>No seam is welded by it.</source>
        <translation>Keine Naht wird damit geschweißt.</translation>
    </message>
    <message>
        <source>Seams welded by it. The ticked ones move to the draft:</source>
        <translation>Damit geschweißte Nähte. Die angekreuzten wechseln zum Entwurf:</translation>
    </message>
    <message numerus="yes">
        <source>All %n seams</source>
        <translation>
            <numerusform>Die eine Naht</numerusform>
            <numerusform>Alle %n Nähte</numerusform>
        </translation>
    </message>
    <message>
        <source>Seams that move to the draft</source>
        <translation>Nähte, die zum Entwurf wechseln</translation>
    </message>
    <message>
        <source>New revision as draft</source>
        <translation>Neue Ausgabe als Entwurf</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::ScheduleModel</name>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Passes</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>Passes that are welded by it</source>
        <translation>Lagen, die damit geschweißt werden</translation>
    </message>
    <message>
        <source>Worst finding on it and on the passes welded by it that this page lists; behind it, where it is worse, what another page has on them</source>
        <translation>Schlimmster Befund des Schweißplans und der damit geschweißten Lagen, den diese Seite aufführt; dahinter, wo er schlimmer ist, der einer anderen Seite</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::SchedulesPage</name>
    <message>
        <source>Identity</source>
        <translation>Kennzeichnung</translation>
    </message>
    <message>
        <source>Arc</source>
        <translation>Lichtbogen</translation>
    </message>
    <message>
        <source>Torch and gas</source>
        <translation>Brenner und Gas</translation>
    </message>
    <message>
        <source>Limits</source>
        <translation>Grenzen</translation>
    </message>
    <message>
        <source>Use</source>
        <translation>Einsatz</translation>
    </message>
    <message>
        <source>Weave</source>
        <translation>Pendeln</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Schedules</source>
        <translation>Schweißpläne</translation>
    </message>
    <message>
        <source>A schedule is a draft until it is qualified by test under the governing code and approved by a responsible person.</source>
        <translation>Ein Schweißplan ist ein Entwurf, bis er nach der geltenden Norm qualifiziert und von verantwortlicher Seite freigegeben ist.</translation>
    </message>
    <message>
        <source>Fields of the schedule</source>
        <translation>Felder des Schweißplans</translation>
    </message>
    <message>
        <source>Passes welded by the schedule</source>
        <translation>Lagen nach diesem Schweißplan</translation>
    </message>
    <message>
        <source>Difference to</source>
        <translation>Unterschied zu</translation>
    </message>
    <message>
        <source>Schedule to compare with</source>
        <translation>Schweißplan zum Vergleich</translation>
    </message>
    <message>
        <source>Difference of two schedules</source>
        <translation>Unterschied zweier Schweißpläne</translation>
    </message>
    <message>
        <source>Add schedule</source>
        <translation>Neuer Schweißplan</translation>
    </message>
    <message>
        <source>A draft like the chosen one</source>
        <translation>Ein Entwurf wie der gewählte</translation>
    </message>
    <message>
        <source>New revision</source>
        <translation>Neue Ausgabe</translation>
    </message>
    <message>
        <source>The next revision as a draft; this one stays as it is</source>
        <translation>Die nächste Ausgabe als Entwurf; diese bleibt, wie sie ist</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Take the schedule out of the plan</source>
        <translation>Den Schweißplan aus dem Plan nehmen</translation>
    </message>
    <message>
        <source>A schedule says how a pass is welded. Open the demo to look around, or start a new plan: it begins with one draft.</source>
        <translation>Ein Schweißplan sagt, wie eine Lage geschweißt wird. Das Beispiel öffnen oder einen neuen Plan beginnen: er bringt einen Entwurf mit.</translation>
    </message>
    <message>
        <source>Passes welded by %1: %2</source>
        <translation>Lagen nach %1: %2</translation>
    </message>
    <message>
        <source>There is no schedule to begin from: start a new plan.</source>
        <translation>Kein Schweißplan zum Anfangen: einen neuen Plan beginnen.</translation>
    </message>
    <message>
        <source>Remove schedule</source>
        <translation>Schweißplan entfernen</translation>
    </message>
    <message>
        <source>The schedule can&apos;t go: %1</source>
        <translation>Der Schweißplan kann nicht weg: %1</translation>
    </message>
    <message>
        <source>Other plan …</source>
        <translation>Anderer Plan …</translation>
    </message>
    <message>
        <source>Compares with the schedules of another plan file</source>
        <translation>Vergleicht mit den Schweißplänen einer anderen Plandatei</translation>
    </message>
    <message>
        <source>Compare with plan</source>
        <translation>Mit Plan vergleichen</translation>
    </message>
    <message>
        <source>Plans (*.weldplan.json);;All files (*)</source>
        <translation>Pläne (*.weldplan.json);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>%1 in %2</source>
        <translation>%1 in %2</translation>
    </message>
    <message>
        <source>Withdraw approval …</source>
        <translation>Freigabe zurücknehmen …</translation>
    </message>
    <message>
        <source>Makes a reviewed or approved schedule a draft again, after a question</source>
        <translation>Macht einen geprüften oder freigegebenen Schweißplan nach einer Frage wieder zum Entwurf</translation>
    </message>
    <message>
        <source>%1 stays as it is: a change goes into a new revision.</source>
        <translation>%1 bleibt, wie es ist: Eine Änderung kommt in eine neue Ausgabe.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::SeamModel</name>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>The weldment that the seam belongs to</source>
        <translation>Das Bauteil, zu dem die Naht gehört</translation>
    </message>
    <message>
        <source>Leg obtained</source>
        <translation>Schenkel erreicht</translation>
    </message>
    <message>
        <source>Leg drawn</source>
        <translation>Schenkel gezeichnet</translation>
    </message>
    <message>
        <source>Throat obtained</source>
        <translation>a-Maß erreicht</translation>
    </message>
    <message>
        <source>Worst finding on the seam that this page lists; behind it, where it is worse, what another page has on the seam</source>
        <translation>Schlimmster Befund der Naht, den diese Seite aufführt; dahinter, wo er schlimmer ist, der einer anderen Seite</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::SeamView</name>
    <message>
        <source>Seams in plan and elevation</source>
        <translation>Nähte im Grund- und Aufriss</translation>
    </message>
    <message>
        <source>The table of seams says the same in words.</source>
        <translation>Die Tabelle der Nähte sagt dasselbe in Worten.</translation>
    </message>
    <message>
        <source>to %1</source>
        <translation>bis %1</translation>
    </message>
    <message>
        <source> (manual)</source>
        <translation> (Hand)</translation>
    </message>
    <message>
        <source>Plan, from above</source>
        <translation>Grundriss, von oben</translation>
    </message>
    <message>
        <source>Elevation, from the front</source>
        <translation>Aufriss, von vorn</translation>
    </message>
    <message>
        <source>Elevation, from the side</source>
        <translation>Aufriss, von der Seite</translation>
    </message>
    <message>
        <source>; state of each seam</source>
        <translation>; Stand jeder Naht</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::SeamsPage</name>
    <message>
        <source>Joint</source>
        <translation>Stoß</translation>
    </message>
    <message>
        <source>Welding</source>
        <translation>Schweißen</translation>
    </message>
    <message>
        <source>Groove</source>
        <translation>Fuge</translation>
    </message>
    <message>
        <source>Intermittent</source>
        <translation>Unterbrochen</translation>
    </message>
    <message>
        <source>Tacks</source>
        <translation>Heftstellen</translation>
    </message>
    <message>
        <source>Seams</source>
        <translation>Nähte</translation>
    </message>
    <message>
        <source>Estimates only: the governing code, qualification by test and a responsible welding coordinator (ISO 14731) decide.</source>
        <translation>Nur Schätzungen: es entscheiden die geltende Norm, die Verfahrensprüfung und die verantwortliche Schweißaufsicht (ISO 14731).</translation>
    </message>
    <message>
        <source>Fields of the seam</source>
        <translation>Felder der Naht</translation>
    </message>
    <message>
        <source>Passes of the seam</source>
        <translation>Lagen der Naht</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>Weldment whose seams are shown</source>
        <translation>Bauteil, dessen Nähte gezeigt werden</translation>
    </message>
    <message>
        <source>Add seam</source>
        <translation>Neue Naht</translation>
    </message>
    <message>
        <source>A new seam after the last one</source>
        <translation>Eine neue Naht nach der letzten</translation>
    </message>
    <message>
        <source>Duplicate</source>
        <translation>Verdoppeln</translation>
    </message>
    <message>
        <source>A copy of the seam</source>
        <translation>Eine Kopie der Naht</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Take the seam out of the plan</source>
        <translation>Die Naht aus dem Plan nehmen</translation>
    </message>
    <message>
        <source>What colours the seams</source>
        <translation>Wonach die Nähte gefärbt sind</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Grundriss</translation>
    </message>
    <message>
        <source>Front</source>
        <translation>Vorn</translation>
    </message>
    <message>
        <source>Side</source>
        <translation>Seite</translation>
    </message>
    <message>
        <source>View: %1</source>
        <translation>Ansicht: %1</translation>
    </message>
    <message>
        <source>A plan begins with a weldment and its seams. Open the demo to look around, or start a new plan.</source>
        <translation>Ein Plan beginnt mit einem Bauteil und seinen Nähten. Das Beispiel öffnen oder einen neuen Plan beginnen.</translation>
    </message>
    <message>
        <source>All weldments</source>
        <translation>Alle Bauteile</translation>
    </message>
    <message>
        <source>There is no weldment yet: start a new plan.</source>
        <translation>Noch kein Bauteil: einen neuen Plan beginnen.</translation>
    </message>
    <message>
        <source>A seam needs a base metal: the plan has none yet.</source>
        <translation>Eine Naht braucht einen Grundwerkstoff: der Plan hat noch keinen.</translation>
    </message>
    <message>
        <source>Duplicate seam</source>
        <translation>Naht verdoppeln</translation>
    </message>
    <message>
        <source>Remove seam</source>
        <translation>Naht entfernen</translation>
    </message>
    <message>
        <source>The seam can&apos;t go: %1</source>
        <translation>Die Naht kann nicht weg: %1</translation>
    </message>
    <message>
        <source>Times</source>
        <translation>Zeiten</translation>
    </message>
    <message>
        <source>Section</source>
        <translation>Querschnitt</translation>
    </message>
    <message>
        <source>Its fields</source>
        <translation>Seine Felder</translation>
    </message>
    <message>
        <source>Fields of the weldment</source>
        <translation>Felder des Bauteils</translation>
    </message>
    <message>
        <source>Shows the weldment&apos;s own fields, its times and section, in place of the seam&apos;s</source>
        <translation>Zeigt statt der Naht die Felder des Bauteils, seine Zeiten und seinen Querschnitt</translation>
    </message>
    <message>
        <source>New weldment</source>
        <translation>Neues Bauteil</translation>
    </message>
    <message>
        <source>Add weldment</source>
        <translation>Neues Bauteil</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::StateWords</name>
    <message>
        <source>No finding: nothing stands against it.</source>
        <translation>Kein Befund: nichts spricht dagegen.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::StatisticsTable</name>
    <message>
        <source>one beyond 3 σ</source>
        <translation>einer jenseits 3 σ</translation>
    </message>
    <message>
        <source>two of three beyond 2 σ</source>
        <translation>zwei von drei jenseits 2 σ</translation>
    </message>
    <message>
        <source>four of five beyond 1 σ</source>
        <translation>vier von fünf jenseits 1 σ</translation>
    </message>
    <message>
        <source>eight in a row on one side</source>
        <translation>acht in Folge auf einer Seite</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>warning: Ppk is low; note: the chart shows a pattern that chance rarely makes</source>
        <translation>Warnung: Ppk ist niedrig; Hinweis: Die Karte zeigt ein Muster, das der Zufall selten bildet</translation>
    </message>
    <message>
        <source>Schedule</source>
        <translation>Schweißplan</translation>
    </message>
    <message>
        <source>Quantity</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Passes</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>Lower control limit</source>
        <translation>Untere Eingriffsgrenze</translation>
    </message>
    <message>
        <source>Mean less three times the sigma of the moving ranges</source>
        <translation>Mittel minus dreimal das Sigma der gleitenden Spannweiten</translation>
    </message>
    <message>
        <source>Upper control limit</source>
        <translation>Obere Eingriffsgrenze</translation>
    </message>
    <message>
        <source>Mean and three times the sigma of the moving ranges</source>
        <translation>Mittel plus dreimal das Sigma der gleitenden Spannweiten</translation>
    </message>
    <message>
        <source>Ppk</source>
        <translation>Ppk</translation>
    </message>
    <message>
        <source>Performance: distance to the nearer limit in units of three overall standard deviations</source>
        <translation>Leistung: Abstand zur näheren Grenze in Einheiten von drei Gesamtstandardabweichungen</translation>
    </message>
    <message>
        <source>Ppk, at least</source>
        <translation>Ppk, mindestens</translation>
    </message>
    <message>
        <source>95 % lower bound of Ppk for so few passes</source>
        <translation>Untere 95-%-Schranke von Ppk bei so wenigen Lagen</translation>
    </message>
    <message>
        <source>Cpk</source>
        <translation>Cpk</translation>
    </message>
    <message>
        <source>Capability: the same with the sigma of the moving ranges</source>
        <translation>Fähigkeit: dasselbe mit dem Sigma der gleitenden Spannweiten</translation>
    </message>
    <message>
        <source>Pp</source>
        <translation>Pp</translation>
    </message>
    <message>
        <source>Cp</source>
        <translation>Cp</translation>
    </message>
    <message>
        <source>Patterns</source>
        <translation>Muster</translation>
    </message>
    <message>
        <source>Runs rules that the chart completes</source>
        <translation>Laufregeln, die die Karte erfüllt</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::StoreDialog</name>
    <message>
        <source>Open record store</source>
        <translation>Nachweisspeicher öffnen</translation>
    </message>
    <message>
        <source>Store</source>
        <translation>Speicher</translation>
    </message>
    <message>
        <source>sqlite:FILE or postgresql://user@host/database</source>
        <translation>sqlite:DATEI oder postgresql://benutzer@rechner/datenbank</translation>
    </message>
    <message>
        <source>Stores (*.db *.sqlite *.ledger);;All files (*)</source>
        <translation>Speicher (*.db *.sqlite *.ledger);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Anchors (optional)</source>
        <translation>Anker (wahlweise)</translation>
    </message>
    <message>
        <source>file of anchor lines that is kept outside the store</source>
        <translation>Datei mit Ankerzeilen, die außerhalb des Speichers liegt</translation>
    </message>
    <message>
        <source>Anchors (*.txt *.anchor);;All files (*)</source>
        <translation>Anker (*.txt *.anchor);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Open and verify</source>
        <translation>Öffnen und prüfen</translation>
    </message>
    <message>
        <source>File …</source>
        <translation>Datei …</translation>
    </message>
    <message>
        <source>Chooses a file</source>
        <translation>Wählt eine Datei</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::StoreJob</name>
    <message>
        <source>Not trusted: the store isn&apos;t as it was written.</source>
        <translation>Nicht vertrauenswürdig: Der Speicher ist nicht, wie er geschrieben wurde.</translation>
    </message>
    <message>
        <source>Trusted: %1, and the anchor covers the first %2.</source>
        <translation>Vertrauenswürdig: %1, und der Anker deckt die ersten %2.</translation>
    </message>
    <message>
        <source>Trusted, but unanchored: %1. Only an anchor kept outside shows that the store wasn&apos;t made anew as a whole.</source>
        <translation>Vertrauenswürdig, aber ohne Anker: %1. Nur ein außerhalb verwahrter Anker zeigt, dass der Speicher nicht im Ganzen neu gemacht wurde.</translation>
    </message>
    <message>
        <source>Not trusted: record %1 isn&apos;t as it was written.</source>
        <translation>Nicht vertrauenswürdig: Nachweis %1 ist nicht, wie er geschrieben wurde.</translation>
    </message>
    <message>
        <source>%1 records are as they were written, and the signatures over them hold</source>
        <translation>%1 Nachweise sind, wie sie geschrieben wurden, und die Signaturen darüber gelten</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::StorePanel</name>
    <message>
        <source>What isn&apos;t as it was written</source>
        <translation>Was nicht ist, wie es geschrieben wurde</translation>
    </message>
    <message>
        <source>Units of the store</source>
        <translation>Einheiten des Speichers</translation>
    </message>
    <message>
        <source>listing units: %1 of %2</source>
        <translation>Einheiten werden aufgezählt: %1 von %2</translation>
    </message>
    <message>
        <source>verifying: %1 of %2 records</source>
        <translation>geprüft: %1 von %2 Nachweisen</translation>
    </message>
    <message>
        <source>Stopped: nothing is said of the store.</source>
        <translation>Angehalten: Vom Speicher ist nichts gesagt.</translation>
    </message>
    <message>
        <source>Open a record store to verify its ledger and see its units.</source>
        <translation>Öffnen Sie einen Nachweisspeicher, um sein Hauptbuch zu prüfen und seine Einheiten zu sehen.</translation>
    </message>
    <message>
        <source>Open store …</source>
        <translation>Speicher öffnen …</translation>
    </message>
    <message>
        <source>Opens a record store and verifies its ledger</source>
        <translation>Öffnet einen Nachweisspeicher und prüft sein Hauptbuch</translation>
    </message>
    <message>
        <source>Verify again</source>
        <translation>Erneut prüfen</translation>
    </message>
    <message>
        <source>Checks every record, signature and number again</source>
        <translation>Prüft jeden Nachweis, jede Signatur und Nummer erneut</translation>
    </message>
    <message>
        <source>Report of the unit …</source>
        <translation>Bericht der Einheit …</translation>
    </message>
    <message>
        <source>Writes the chosen unit&apos;s weld record as PDF</source>
        <translation>Schreibt den Schweißnachweis der gewählten Einheit als PDF</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Halt</translation>
    </message>
    <message>
        <source>Stops verifying (Esc)</source>
        <translation>Hält die Prüfung an (Esc)</translation>
    </message>
    <message>
        <source>Progress of the verification</source>
        <translation>Fortschritt der Prüfung</translation>
    </message>
    <message>
        <source>opening the store …</source>
        <translation>öffnet den Speicher …</translation>
    </message>
    <message>
        <source>Not all units are listed.</source>
        <translation>Nicht alle Einheiten sind aufgezählt.</translation>
    </message>
    <message>
        <source>Anchor: %1</source>
        <translation>Anker: %1</translation>
    </message>
    <message>
        <source>Keep this line outside the store, printed or on another machine.</source>
        <translation>Verwahren Sie diese Zeile außerhalb des Speichers, gedruckt oder auf einem anderen Rechner.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::StoreTable</name>
    <message>
        <source>scrapped</source>
        <translation>Ausschuss</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>complete</source>
        <translation>vollständig</translation>
    </message>
    <message>
        <source>incomplete</source>
        <translation>unvollständig</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>complete: all passes there, nothing open, none to be welded again; not known: no plan said what the unit needs</source>
        <translation>vollständig: alle Lagen da, nichts offen, keine neu zu schweißen; unbekannt: Kein Plan sagte, was die Einheit braucht</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>Passes</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>Undecided</source>
        <translation>Offen</translation>
    </message>
    <message>
        <source>By hand</source>
        <translation>Von Hand</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Offen</translation>
    </message>
    <message>
        <source>Nonconformances without an end, and causes that left passes undecided</source>
        <translation>Abweichungen ohne Abschluss und Gründe, die Lagen offen ließen</translation>
    </message>
    <message>
        <source>Missing passes</source>
        <translation>Fehlende Lagen</translation>
    </message>
    <message>
        <source>Record</source>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>What isn&apos;t as it was written</source>
        <translation>Was nicht ist, wie es geschrieben wurde</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::TemperaturePlot</name>
    <message>
        <source>Temperature of the surface round the arc</source>
        <translation>Temperatur der Oberfläche um den Lichtbogen</translation>
    </message>
    <message>
        <source>Thermal cycles of chosen points</source>
        <translation>Temperaturverläufe gewählter Punkte</translation>
    </message>
    <message>
        <source>%1 behind the arc, %2 beside the seam: %3</source>
        <translation>%1 hinter dem Lichtbogen, %2 neben der Naht: %3</translation>
    </message>
    <message>
        <source>along the seam, ahead of the arc to the right (%1)</source>
        <translation>längs der Naht, vor dem Lichtbogen rechts (%1)</translation>
    </message>
    <message>
        <source>beside the seam (%1)</source>
        <translation>neben der Naht (%1)</translation>
    </message>
    <message>
        <source>%1 beside: peak %2</source>
        <translation>%1 daneben: Spitze %2</translation>
    </message>
    <message>
        <source>, t8/5 %1 s</source>
        <translation>, t8/5 %1 s</translation>
    </message>
    <message>
        <source>time after the arc has passed, s</source>
        <translation>Zeit nach dem Lichtbogen, s</translation>
    </message>
    <message>
        <source>temperature (%1)</source>
        <translation>Temperatur (%1)</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::TimelineView</name>
    <message>
        <source>arc</source>
        <translation>Lichtbogen</translation>
    </message>
    <message>
        <source>arc start</source>
        <translation>Zünden</translation>
    </message>
    <message>
        <source>crater and post-flow</source>
        <translation>Krater und Nachströmen</translation>
    </message>
    <message>
        <source>air move</source>
        <translation>Eilgang</translation>
    </message>
    <message>
        <source>sensing</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>wait</source>
        <translation>Warten</translation>
    </message>
    <message>
        <source>positioner</source>
        <translation>Positionierer</translation>
    </message>
    <message>
        <source>torch service</source>
        <translation>Brennerpflege</translation>
    </message>
    <message>
        <source>wire change</source>
        <translation>Drahtwechsel</translation>
    </message>
    <message>
        <source>index</source>
        <translation>Weitertakten</translation>
    </message>
    <message>
        <source>load and unload</source>
        <translation>Laden und Entladen</translation>
    </message>
    <message>
        <source>Timeline of the robots</source>
        <translation>Zeitablauf der Roboter</translation>
    </message>
    <message>
        <source>The table of moves says the same in words. Arrow keys move, plus and minus zoom, Home shows all.</source>
        <translation>Die Tabelle der Bewegungen sagt dasselbe. Pfeiltasten schieben, Plus und Minus vergrößern, Pos1 zeigt alles.</translation>
    </message>
    <message>
        <source>bound %1</source>
        <translation>Schranke %1</translation>
    </message>
    <message>
        <source>takt %1</source>
        <translation>Takt %1</translation>
    </message>
    <message>
        <source>cycle %1</source>
        <translation>Taktzeit %1</translation>
    </message>
    <message>
        <source>cell</source>
        <translation>Zelle</translation>
    </message>
    <message>
        <source>, pass %1</source>
        <translation>, Lage %1</translation>
    </message>
    <message>
        <source>%1%2
%3 to %4 s</source>
        <translation>%1%2
%3 bis %4 s</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::TraceView</name>
    <message>
        <source>Trace of the pass</source>
        <translation>Aufzeichnung der Lage</translation>
    </message>
    <message>
        <source>Plus and minus zoom, arrow keys move, Home shows all. The table of passes has means and verdicts.</source>
        <translation>Plus und Minus vergrößern, Pfeiltasten schieben, Pos1 zeigt alles. Die Tabelle der Lagen hat Mittel und Urteile.</translation>
    </message>
    <message>
        <source>time since the first sample, s</source>
        <translation>Zeit seit dem ersten Messwert, s</translation>
    </message>
    <message>
        <source>Choose a pass to see what was logged of it.</source>
        <translation>Eine Lage wählen, um ihre Aufzeichnung zu sehen.</translation>
    </message>
    <message>
        <source>line %1, %2 s</source>
        <translation>Zeile %1, %2 s</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::WindowPanel</name>
    <message>
        <source>Value that colours the window</source>
        <translation>Wert, der das Fenster färbt</translation>
    </message>
    <message>
        <source>%1 on %2/%3: %4 % of the map is feasible; the working point %5.</source>
        <translation>%1 auf %2/%3: %4 % des Bildes sind zulässig; der Arbeitspunkt %5.</translation>
    </message>
    <message>
        <source>keeps all limits</source>
        <translation>hält alle Grenzen</translation>
    </message>
    <message>
        <source>does not keep them</source>
        <translation>hält sie nicht</translation>
    </message>
    <message>
        <source>%1: %2 against %3.</source>
        <translation>%1: %2 gegen %3.</translation>
    </message>
    <message>
        <source>Hatched: a limit is not kept. Solid lines: leg; dashed: heat input; dotted: t8/5.</source>
        <translation>Schraffiert: eine Grenze ist verletzt. Linien: Schenkel; gestrichelt: Wärmeeinbringung; gepunktet: t8/5.</translation>
    </message>
    <message>
        <source>Move working point</source>
        <translation>Arbeitspunkt verschieben</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::WindowPlot</name>
    <message>
        <source>Operating window</source>
        <translation>Arbeitsfenster</translation>
    </message>
    <message>
        <source>The arrow keys move the working point: up and down the wire feed, left and right the travel speed.</source>
        <translation>Die Pfeiltasten verschieben den Arbeitspunkt: auf und ab den Drahtvorschub, links und rechts die Geschwindigkeit.</translation>
    </message>
    <message>
        <source>travel speed (%1)</source>
        <translation>Schweißgeschwindigkeit (%1)</translation>
    </message>
    <message>
        <source>wire feed speed (%1)</source>
        <translation>Drahtvorschub (%1)</translation>
    </message>
    <message>
        <source>all limits kept</source>
        <translation>alle Grenzen gehalten</translation>
    </message>
    <message>
        <source>beyond: %1</source>
        <translation>verletzt: %1</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::Words</name>
    <message>
        <source>Source</source>
        <translation>Quelle</translation>
    </message>
    <message>
        <source>Holds</source>
        <translation>Gilt für</translation>
    </message>
    <message>
        <source>Accuracy</source>
        <translation>Genauigkeit</translation>
    </message>
    <message>
        <source>It rests on</source>
        <translation>Es beruht auf</translation>
    </message>
    <message>
        <source>%1 is given or counted: no formula stands behind it.</source>
        <translation>%1 ist gegeben oder gezählt: dahinter steht keine Formel.</translation>
    </message>
</context>
</TS>
