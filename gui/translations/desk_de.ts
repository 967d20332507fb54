<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>DrawingWords</name>
    <message>
        <source>inside a hollow part</source>
        <translation>innen in einem hohlen Teil</translation>
    </message>
    <message>
        <source>beside a curved part</source>
        <translation>neben einem runden Teil</translation>
    </message>
    <message>
        <source>end of a plate</source>
        <translation>Ende eines Blechs</translation>
    </message>
    <message>
        <source>the parts overlap</source>
        <translation>die Teile überlappen</translation>
    </message>
    <message>
        <source>flush</source>
        <translation>bündig</translation>
    </message>
    <message>
        <source>back of a butt</source>
        <translation>Rückseite eines Stumpfstoßes</translation>
    </message>
    <message>
        <source>bolt or the like</source>
        <translation>Schraube oder Ähnliches</translation>
    </message>
    <message>
        <source>not wanted</source>
        <translation>nicht gewünscht</translation>
    </message>
    <message>
        <source>leg %1</source>
        <translation>Schenkel %1</translation>
    </message>
    <message>
        <source>throat %1</source>
        <translation>Nahtdicke %1</translation>
    </message>
    <message>
        <source>through, %1</source>
        <translation>durch, %1</translation>
    </message>
    <message>
        <source>new</source>
        <translation>neu</translation>
    </message>
    <message>
        <source>moved</source>
        <translation>verschoben</translation>
    </message>
    <message>
        <source>unchanged</source>
        <translation>unverändert</translation>
    </message>
    <message>
        <source>lacks %1</source>
        <translation>es fehlt: %1</translation>
    </message>
    <message>
        <source>left out: %1</source>
        <translation>ausgelassen: %1</translation>
    </message>
</context>
<context>
    <name>QObject</name>
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
    <name>QShortcut</name>
    <message>
        <source>Ctrl</source>
        <translation>Strg</translation>
    </message>
    <message>
        <source>Shift</source>
        <translation>Umschalt</translation>
    </message>
    <message>
        <source>Alt</source>
        <translation>Alt</translation>
    </message>
    <message>
        <source>Ins</source>
        <translation>Einfg</translation>
    </message>
    <message>
        <source>Del</source>
        <translation>Entf</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Links</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Rechts</translation>
    </message>
    <message>
        <source>Home</source>
        <translation>Pos1</translation>
    </message>
    <message>
        <source>End</source>
        <translation>Ende</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Backspace</source>
        <translation>Rück</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
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
    <name>seamtakt::desk::ActualPanel</name>
    <message>
        <source>Units beside their planned cycles</source>
        <translation>Einheiten neben ihren geplanten Zyklen</translation>
    </message>
    <message>
        <source>Arcs and gaps of the unit</source>
        <translation>Lichtbögen und Lücken der Einheit</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::AxonometricView</name>
    <message>
        <source>The weldment in space</source>
        <translation>Das Bauteil im Raum</translation>
    </message>
    <message>
        <source>Arrow keys turn it, plus and minus zoom, 1 to 6 are views along the axes, Home is the first view. The table of seams says the same in words.</source>
        <translation>Pfeiltasten drehen es, Plus und Minus vergrößern und verkleinern, 1 bis 6 sind Ansichten längs der Achsen, Pos1 ist die erste Ansicht. Die Tabelle der Nähte sagt dasselbe in Worten.</translation>
    </message>
    <message>
        <source> (manual)</source>
        <translation> (Hand)</translation>
    </message>
    <message>
        <source>Turned freely</source>
        <translation>Frei gedreht</translation>
    </message>
    <message>
        <source>; state of each seam</source>
        <translation>; Stand jeder Naht</translation>
    </message>
    <message>
        <source>From the front</source>
        <translation>Von vorn</translation>
    </message>
    <message>
        <source>From the rear</source>
        <translation>Von hinten</translation>
    </message>
    <message>
        <source>From the left</source>
        <translation>Von links</translation>
    </message>
    <message>
        <source>From the right</source>
        <translation>Von rechts</translation>
    </message>
    <message>
        <source>From above</source>
        <translation>Von oben</translation>
    </message>
    <message>
        <source>From below</source>
        <translation>Von unten</translation>
    </message>
    <message>
        <source>From the front, left and above</source>
        <translation>Von vorn links oben</translation>
    </message>
    <message>
        <source>; plates guessed from seams</source>
        <translation>; Bleche nach den Nähten geschätzt</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::BrowsedTable</name>
    <message>
        <source>void</source>
        <translation>ungültig</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>Record</source>
        <translation>Nachweis</translation>
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
        <source>Seam</source>
        <translation>Naht</translation>
    </message>
    <message>
        <source>Pass</source>
        <translation>Raupe</translation>
    </message>
    <message>
        <source>Schedule</source>
        <translation>Schweißanweisung</translation>
    </message>
    <message>
        <source>Robot</source>
        <translation>Roboter</translation>
    </message>
    <message>
        <source>Welder</source>
        <translation>Schweißer</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Los</translation>
    </message>
    <message>
        <source>Welded (UTC)</source>
        <translation>Geschweißt (UTC)</translation>
    </message>
    <message>
        <source>Heat input</source>
        <translation>Wärmeeinbringung</translation>
    </message>
    <message>
        <source>, pass %1</source>
        <translation>, Raupe %1</translation>
    </message>
    <message>
        <source>Record %1: unit %2, seam %3</source>
        <translation>Nachweis %1: Einheit %2, Naht %3</translation>
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
        <translation>Woraus die Zykluszeit besteht</translation>
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
        <source>cycle %1, arc on %2 %</source>
        <translation>Zykluszeit %1, Lichtbogen %2 %</translation>
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
    <message>
        <source>3D</source>
        <translation>3D</translation>
    </message>
    <message>
        <source>Weldment in space</source>
        <translation>Bauteil im Raum</translation>
    </message>
    <message>
        <source>Shows the weldment in space in place of the plan of its seams</source>
        <translation>Zeigt das Bauteil im Raum statt der Draufsicht seiner Nähte</translation>
    </message>
    <message>
        <source>A cell is its robots, positioner and stations. Open the demo to see one, or start a new plan.</source>
        <translation>Eine Zelle sind ihre Roboter, der Positionierer und die Stationen. Das Beispiel zeigt eine; oder einen neuen Plan beginnen.</translation>
    </message>
    <message>
        <source>The plan has no cell yet. A starter cell has two robots, a positioner and two stations, with times to be changed.</source>
        <translation>Der Plan hat noch keine Zelle. Eine Startzelle hat zwei Roboter, einen Positionierer und zwei Stationen; ihre Zeiten sind anzupassen.</translation>
    </message>
    <message>
        <source>The cell has nothing to weld yet: the plan has no weldment.</source>
        <translation>Die Zelle hat noch nichts zu schweißen: Der Plan hat kein Bauteil.</translation>
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
        <translation>Schweißanweisungen</translation>
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
        <translation>Nachweise</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::ChoiceDialog</name>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::ChoiceTable</name>
    <message>
        <source>On this seam</source>
        <translation>An dieser Naht</translation>
    </message>
    <message>
        <source>What is found first</source>
        <translation>Was zuerst befunden wird</translation>
    </message>
    <message>
        <source>being judged …</source>
        <translation>wird beurteilt …</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::CycleTable</name>
    <message>
        <source>Part of the cycle</source>
        <translation>Teil der Zykluszeit</translation>
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
        <source>Cycle</source>
        <translation>Zykluszeit</translation>
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
        <translation>Raupe</translation>
    </message>
    <message>
        <source>cell</source>
        <translation>Zelle</translation>
    </message>
    <message>
        <source>From the cycle before to the one after it: what is gained is negative</source>
        <translation>Vom Zyklus davor zu dem danach: Gewonnenes ist negativ</translation>
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
        <translation>Diese Anweisung</translation>
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
        <translation>Von gesperrten Schweißanweisungen benutzt: %1. Die Änderung kann in eine Kopie.</translation>
    </message>
    <message>
        <source>the table has no such column</source>
        <translation>die Tabelle hat keine solche Spalte</translation>
    </message>
    <message>
        <source>the table can&apos;t take more rows</source>
        <translation>die Tabelle nimmt keine weiteren Zeilen auf</translation>
    </message>
    <message>
        <source>an id is changed by Rename, with all that refers to it</source>
        <translation>eine Kennung ändert „Umbenennen“, mit allem, was sich auf sie bezieht</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::DrawingDialog</name>
    <message>
        <source>Import drawing</source>
        <translation>Zeichnung importieren</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>Weldment</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>One of the plan, or the name of a new one</source>
        <translation>Eines des Plans, oder der Name eines neuen</translation>
    </message>
    <message>
        <source>Up</source>
        <translation>Oben</translation>
    </message>
    <message>
        <source>Which direction of the drawing is up: seams get their position by it</source>
        <translation>Welche Richtung der Zeichnung oben ist: Nähte bekommen danach ihre Position</translation>
    </message>
    <message>
        <source>Base metal</source>
        <translation>Grundwerkstoff</translation>
    </message>
    <message>
        <source>Thickness</source>
        <translation>Dicke</translation>
    </message>
    <message>
        <source>Of parts that have none: 8 mm for all of them, or PART=8mm; several with semicolons</source>
        <translation>Von Teilen ohne Dicke: 8 mm für alle, oder TEIL=8mm; mehrere mit Strichpunkten</translation>
    </message>
    <message>
        <source>Throat of fillets</source>
        <translation>Nahtdicke der Kehlnähte</translation>
    </message>
    <message>
        <source>A share of the thinner plate, rounded up to 0.5 mm: a proposal, no design</source>
        <translation>Ein Anteil des dünneren Blechs, aufgerundet auf 0,5 mm: ein Vorschlag, keine Bemessung</translation>
    </message>
    <message>
        <source>Leg</source>
        <translation>Schenkel</translation>
    </message>
    <message>
        <source>Of fillets on both sides of a joint, in place of the throat: a share such as 0.7t</source>
        <translation>Von Kehlnähten auf beiden Seiten eines Stoßes, statt der Nahtdicke: ein Anteil wie 0.7t</translation>
    </message>
    <message>
        <source>Butts filled through the thinner plate</source>
        <translation>Stumpfnähte durch das dünnere Blech gefüllt</translation>
    </message>
    <message>
        <source>Schedules by their use</source>
        <translation>Schweißanweisungen nach ihrer Verwendung</translation>
    </message>
    <message>
        <source>Schedule of the others</source>
        <translation>Schweißanweisung der übrigen</translation>
    </message>
    <message>
        <source>Seam</source>
        <translation>Naht</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>Other part</source>
        <translation>Anderes Teil</translation>
    </message>
    <message>
        <source>Joint</source>
        <translation>Stoß</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Maß</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Zustand</translation>
    </message>
    <message>
        <source>Sides of the joints</source>
        <translation>Seiten der Stöße</translation>
    </message>
    <message>
        <source>The drawing is read</source>
        <translation>Die Zeichnung wird gelesen</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Importieren</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>The weldment needs a name.</source>
        <translation>Das Bauteil braucht einen Namen.</translation>
    </message>
    <message>
        <source>Reading drawings needs the program seamtakt-drawing, which isn&apos;t installed here. It is built where OpenCASCADE is found: run packaging/setup drawing and build again, or name the program in SEAMTAKT_DRAWING_PROGRAM.</source>
        <translation>Zeichnungen liest das Programm seamtakt-drawing, das hier nicht installiert ist. Es wird gebaut, wo OpenCASCADE vorhanden ist: packaging/setup drawing ausführen und neu bauen, oder das Programm in SEAMTAKT_DRAWING_PROGRAM nennen.</translation>
    </message>
    <message>
        <source>Reading …</source>
        <translation>Wird gelesen …</translation>
    </message>
    <message>
        <source>%1 new, %2 moved, %3 unchanged, %4 lack something, %5 left out, %6 lost</source>
        <translation>%1 neu, %2 verschoben, %3 unverändert, %4 unvollständig, %5 ausgelassen, %6 verloren</translation>
    </message>
    <message>
        <source>The file is the same as before.</source>
        <translation>Die Datei ist dieselbe wie zuvor.</translation>
    </message>
    <message>
        <source>The file has changed.</source>
        <translation>Die Datei hat sich geändert.</translation>
    </message>
    <message>
        <source>Seams that the drawing doesn&apos;t have any more, and that stay: %1.</source>
        <translation>Nähte, die die Zeichnung nicht mehr hat und die bleiben: %1.</translation>
    </message>
    <message>
        <source>The list shows the first %1 sides.</source>
        <translation>Die Liste zeigt die ersten %1 Seiten.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::EmptySide</name>
    <message>
        <source>Add seam</source>
        <translation>Neue Naht</translation>
    </message>
    <message>
        <source>Add schedule</source>
        <translation>Neue Schweißanweisung</translation>
    </message>
    <message>
        <source>Starter cell</source>
        <translation>Startzelle</translation>
    </message>
    <message>
        <source>Go to the seams</source>
        <translation>Zu den Nähten</translation>
    </message>
    <message>
        <source>Import …</source>
        <translation>Importieren …</translation>
    </message>
    <message>
        <source>Fields of the weldment</source>
        <translation>Felder des Bauteils</translation>
    </message>
    <message>
        <source>Plan data</source>
        <translation>Plandaten</translation>
    </message>
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
    <message>
        <source>F2 or a double click: rename, with all that refers to it</source>
        <translation>F2 oder Doppelklick: umbenennen, mit allem, was sich darauf bezieht</translation>
    </message>
    <message>
        <source>F2 or a double click: as a table</source>
        <translation>F2 oder Doppelklick: als Tabelle</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::FieldForm</name>
    <message>
        <source>Add %1</source>
        <translation>%1 hinzufügen</translation>
    </message>
    <message>
        <source>Remove %1</source>
        <translation>%1 entfernen</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::Figures</name>
    <message>
        <source>%1 fail</source>
        <translation>%1 Fehler</translation>
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
        <translation>Bauteil, Naht und Raupe</translation>
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
    <message>
        <source>such as: %1</source>
        <translation>zum Beispiel: %1</translation>
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
    <message>
        <source>By cause</source>
        <translation>Nach Ursache</translation>
    </message>
    <message>
        <source>Findings of one rule are one row; Enter opens it</source>
        <translation>Befunde einer Regel sind eine Zeile; die Eingabetaste öffnet sie</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::FitDialog</name>
    <message>
        <source>Fit seams</source>
        <translation>Nähte einstellen</translation>
    </message>
    <message>
        <source>What to have least of</source>
        <translation>Wovon möglichst wenig</translation>
    </message>
    <message>
        <source>Least time</source>
        <translation>Wenig Zeit</translation>
    </message>
    <message>
        <source>Least heat</source>
        <translation>Wenig Wärme</translation>
    </message>
    <message>
        <source>Least cost</source>
        <translation>Wenig Kosten</translation>
    </message>
    <message>
        <source>Only schedules that exist</source>
        <translation>Nur vorhandene Schweißanweisungen</translation>
    </message>
    <message>
        <source>Seams take another schedule of the plan as it stands; no settings are new</source>
        <translation>Nähte nehmen eine andere Schweißanweisung des Plans, wie sie ist; keine Einstellung ist neu</translation>
    </message>
    <message>
        <source>Settings before and after</source>
        <translation>Einstellungen davor und danach</translation>
    </message>
    <message>
        <source>Conflicts</source>
        <translation>Konflikte</translation>
    </message>
    <message>
        <source>Take it over</source>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
    <message>
        <source>searching …</source>
        <translation>sucht …</translation>
    </message>
    <message>
        <source>The settings are the plan&apos;s. Undo brings back the ones before.</source>
        <translation>Die Einstellungen sind die des Plans. Rückgängig holt die vorigen zurück.</translation>
    </message>
    <message>
        <source>Stay as planned:</source>
        <translation>Bleibt wie geplant:</translation>
    </message>
    <message>
        <source>Stays as planned: %1</source>
        <translation>Bleibt wie geplant: %1</translation>
    </message>
    <message>
        <source>Margin to the limits:</source>
        <translation>Abstand zu den Grenzen:</translation>
    </message>
    <message>
        <source>Margin to the limits</source>
        <translation>Abstand zu den Grenzen</translation>
    </message>
    <message>
        <source>Share of each limit that values stay inside it; estimates of preheat and hardness have their own</source>
        <translation>Anteil jeder Grenze, um den die Werte innerhalb bleiben; geschätzte Vorwärmung und Härte haben ihren eigenen</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::FitTable</name>
    <message>
        <source>no settings</source>
        <translation>keine Einstellungen</translation>
    </message>
    <message>
        <source>existing schedule</source>
        <translation>vorhandene Schweißanweisung</translation>
    </message>
    <message>
        <source>as planned</source>
        <translation>wie geplant</translation>
    </message>
    <message>
        <source>new settings, not taken</source>
        <translation>neue Einstellungen, nicht übernommen</translation>
    </message>
    <message>
        <source>new settings</source>
        <translation>neue Einstellungen</translation>
    </message>
    <message>
        <source>Found</source>
        <translation>Gefunden</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Held back by, or in conflict</source>
        <translation>Begrenzt durch, oder im Konflikt</translation>
    </message>
    <message>
        <source>Without settings: limits that no settings keep together</source>
        <translation>Ohne Einstellungen: Grenzen, die keine Einstellung zusammen hält</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::GridView</name>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>Nothing is changed: there is the same already</source>
        <translation>Nichts ist geändert: Es steht schon dasselbe da</translation>
    </message>
    <message>
        <source>Nothing is changed. %1: %2</source>
        <translation>Nichts ist geändert. %1: %2</translation>
    </message>
    <message>
        <source>The plan has changed meanwhile: nothing is pasted.</source>
        <translation>Der Plan hat sich inzwischen geändert: Nichts ist eingefügt.</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Set for all selected …</source>
        <translation>Für alle gewählten setzen …</translation>
    </message>
    <message>
        <source>Filter …</source>
        <translation>Filter …</translation>
    </message>
    <message>
        <source>Set %1</source>
        <translation>%1 setzen</translation>
    </message>
    <message>
        <source>All columns in their first order</source>
        <translation>Alle Spalten in der ersten Reihenfolge</translation>
    </message>
    <message>
        <source>%1: %2 Undo takes it back.</source>
        <translation>%1: %2 Rückgängig nimmt es zurück.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::HandbookWindow</name>
    <message>
        <source>en</source>
        <comment>the language of the handbook: en or de</comment>
        <translation>de</translation>
    </message>
    <message>
        <source>Handbook</source>
        <translation>Handbuch</translation>
    </message>
    <message>
        <source>The handbook isn&apos;t installed: it was looked for in %1.</source>
        <translation>Das Handbuch ist nicht installiert: Gesucht wurde in %1.</translation>
    </message>
    <message>
        <source>&amp;Back</source>
        <translation>&amp;Zurück</translation>
    </message>
    <message>
        <source>&amp;Contents</source>
        <translation>&amp;Inhalt</translation>
    </message>
    <message>
        <source>C&amp;lose</source>
        <translation>&amp;Schließen</translation>
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
        <translation>Wärme je Raupe</translation>
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
        <source>Map and curves: one plate of %1 with images of the arc (Grong 1997, chapter 1), constant handbook properties.</source>
        <translation>Karte und Kurven: ein Blech von %1 mit Spiegelbildern des Lichtbogens (Grong 1997, Kapitel 1), feste Stoffwerte aus dem Handbuch.</translation>
    </message>
    <message>
        <source>The table&apos;s t8/5 of this pass, %1, is by EN 1011-2, annex D: its shape factors count the heat that the joint&apos;s second plate takes, which the curves leave out.</source>
        <translation>Die t8/5 dieser Raupe in der Tabelle, %1, ist nach EN 1011-2, Anhang D: Deren Nahtfaktoren zählen die Wärme mit, die das zweite Blech des Stoßes aufnimmt; die Kurven lassen sie weg.</translation>
    </message>
    <message>
        <source>Heat follows from seams and their schedules: open the demo, or start a new plan.</source>
        <translation>Wärme folgt aus Nähten und Schweißanweisungen: das Beispiel öffnen oder einen neuen Plan beginnen.</translation>
    </message>
    <message>
        <source>Heat follows from seams and their schedules: the plan has no seam yet.</source>
        <translation>Wärme folgt aus Nähten und Schweißanweisungen: Der Plan hat noch keine Naht.</translation>
    </message>
    <message>
        <source>Heat follows from seams and their schedules: give a seam a schedule.</source>
        <translation>Wärme folgt aus Nähten und Schweißanweisungen: einer Naht eine Schweißanweisung geben.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::ImportDialog</name>
    <message>
        <source>Import log</source>
        <translation>Protokoll einlesen</translation>
    </message>
    <message>
        <source>Arc logs, one on each line</source>
        <translation>Lichtbogenprotokolle, je Zeile eines</translation>
    </message>
    <message>
        <source>Files …</source>
        <translation>Dateien …</translation>
    </message>
    <message>
        <source>Chooses the logs</source>
        <translation>Wählt die Protokolle</translation>
    </message>
    <message>
        <source>Tables (*.csv);;All files (*)</source>
        <translation>Tabellen (*.csv);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Columns file (optional)</source>
        <translation>Spaltendatei (freigestellt)</translation>
    </message>
    <message>
        <source>names, units and job numbers of a log with names of its own</source>
        <translation>Namen, Einheiten und Jobnummern eines Protokolls mit eigenen Namen</translation>
    </message>
    <message>
        <source>Columns files (*.json);;All files (*)</source>
        <translation>Spaltendateien (*.json);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Units by time (optional)</source>
        <translation>Einheiten nach Zeit (freigestellt)</translation>
    </message>
    <message>
        <source>unit_serial, weldment, start, end, where the log has no serial numbers</source>
        <translation>unit_serial, weldment, start, end, wo das Protokoll keine Seriennummern hat</translation>
    </message>
    <message>
        <source>Manual seams (optional)</source>
        <translation>Handnähte (freigestellt)</translation>
    </message>
    <message>
        <source>unit_serial, seam, pass, welder, schedule, date, result</source>
        <translation>unit_serial, seam, pass, welder, schedule, date, result</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Arc logs (*.csv *.gz *.txt);;All files (*)</source>
        <translation>Lichtbogenprotokolle (*.csv *.gz *.txt);;Alle Dateien (*)</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::IndividualsPlot</name>
    <message>
        <source>%1: passes in order</source>
        <translation>%1: Raupen der Reihe nach</translation>
    </message>
    <message>
        <source>Control chart</source>
        <translation>Regelkarte</translation>
    </message>
    <message>
        <source>Values pass by pass. Dashed: the schedule&apos;s limits. Line: mean. Dots and dashes: control limits, three sigma about the mean. Ring: the value completes a pattern that chance rarely makes.</source>
        <translation>Werte Raupe für Raupe. Gestrichelt: Grenzen der Schweißanweisung. Linie: Mittel. Strichpunkt: Eingriffsgrenzen, drei Sigma um das Mittel. Ring: Der Wert schließt ein Muster ab, das der Zufall selten bildet.</translation>
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
    <message>
        <source>, %1 orders late</source>
        <translation>, %1 Aufträge verspätet</translation>
    </message>
    <message>
        <source>, %1 done on %2</source>
        <translation>, %1 fertig am %2</translation>
    </message>
    <message>
        <source>Not finished on %1: %2.</source>
        <translation>Nicht fertig am %1: %2.</translation>
    </message>
    <message>
        <source>%1 orders late</source>
        <translation>%1 Aufträge verspätet</translation>
    </message>
    <message>
        <source>A line is its takt and its stages: Plan data adds them.</source>
        <translation>Eine Linie sind ihr Takt und ihre Stufen: Unter Plandaten werden sie angelegt.</translation>
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
    <message>
        <source>%1 h after it was due</source>
        <translation>%1 h nach dem Termin</translation>
    </message>
    <message>
        <source>after it was due in %1 % of the runs</source>
        <translation>in %1 % der Läufe nach dem Termin</translation>
    </message>
    <message>
        <source>overdue</source>
        <translation>überfällig</translation>
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
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Undo %1</source>
        <translation>Rückgängig: %1</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Redo %1</source>
        <translation>Wiederholen: %1</translation>
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
        <translation>Damit wird nach gesperrten Schweißanweisungen geschweißt, die bleiben, wie sie sind: %1. Die Änderung kann in eine Kopie, %2, die eine neue Ausgabe nennen kann.</translation>
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
    <message>
        <source>Certificate of conformity</source>
        <translation>Konformitätsbescheinigung</translation>
    </message>
    <message>
        <source>Heat-input record</source>
        <translation>Nachweis der Wärmeeinbringung</translation>
    </message>
    <message>
        <source>record</source>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>&amp;Certificate of a unit …</source>
        <translation>&amp;Bescheinigung einer Einheit …</translation>
    </message>
    <message>
        <source>Re&amp;name …</source>
        <translation>&amp;Umbenennen …</translation>
    </message>
    <message>
        <source>Add a starter &amp;cell</source>
        <translation>Anfangs&amp;zelle anlegen</translation>
    </message>
    <message>
        <source>Add a starter cell</source>
        <translation>Anfangszelle anlegen</translation>
    </message>
    <message>
        <source>The plan has a cell: it is in Plan data.</source>
        <translation>Der Plan hat eine Zelle: Sie steht unter Plandaten.</translation>
    </message>
    <message>
        <source>Two robots, a positioner and two stations: put in your own times in Plan data.</source>
        <translation>Zwei Roboter, ein Positionierer und zwei Stationen: Tragen Sie Ihre Zeiten unter Plandaten ein.</translation>
    </message>
    <message>
        <source>Import sea&amp;ms or schedules …</source>
        <translation>Nähte oder Schweißanweisungen i&amp;mportieren …</translation>
    </message>
    <message>
        <source>E&amp;xport seams and schedules …</source>
        <translation>Nähte und Schweißanweisungen e&amp;xportieren …</translation>
    </message>
    <message>
        <source>Import list</source>
        <translation>Liste importieren</translation>
    </message>
    <message>
        <source>Lists (*.xlsx *.ods *.csv);;All files (*)</source>
        <translation>Listen (*.xlsx *.ods *.csv);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Imported: %1 new, %2 changed.</source>
        <translation>Importiert: %1 neu, %2 geändert.</translation>
    </message>
    <message>
        <source>Export seams and schedules</source>
        <translation>Nähte und Schweißanweisungen exportieren</translation>
    </message>
    <message>
        <source>Workbooks (*.xlsx);;Seams as CSV (*.csv)</source>
        <translation>Arbeitsmappen (*.xlsx);;Nähte als CSV (*.csv)</translation>
    </message>
    <message>
        <source>List written to %1</source>
        <translation>Liste geschrieben: %1</translation>
    </message>
    <message>
        <source>No schedule is chosen.</source>
        <translation>Keine Schweißanweisung ist gewählt.</translation>
    </message>
    <message>
        <source>Schedule sheets as PDF</source>
        <translation>Schweißanweisungen als PDF</translation>
    </message>
    <message>
        <source>Schedule sheets written to %1</source>
        <translation>Schweißanweisungen nach %1 geschrieben</translation>
    </message>
    <message>
        <source>&amp;Language</source>
        <translation>&amp;Sprache</translation>
    </message>
    <message>
        <source>Language of the system</source>
        <translation>Sprache des Systems</translation>
    </message>
    <message>
        <source>&amp;History …</source>
        <translation>&amp;Verlauf …</translation>
    </message>
    <message>
        <source>&amp;Fit selected seams …</source>
        <translation>Gewählte Nähte &amp;einstellen …</translation>
    </message>
    <message>
        <source>Ctrl+1 … Ctrl+7: the links of the chain and the findings
F1: Explain the value in focus
F2 or typing: edit a cell; F2 on an id: rename
Enter on a finding: go to its field
Arrow up and down in a number: step; Page up and down: ten steps
Ctrl+C, Ctrl+V: a range of a table, to and from a spreadsheet
Ctrl+F: filter the table; Ctrl+Enter: set for all selected rows
Ctrl+Z, Ctrl+Y: undo, redo
F8: SI or US units
Ctrl+I: import a log; Ctrl+R: report as PDF
F6: next part of the page</source>
        <translation>Strg+1 … Strg+7: Glieder der Kette und Befunde
F1: den Wert im Fokus erklären
F2 oder tippen: Zelle ändern; F2 auf einer Kennung: umbenennen
Eingabe auf einem Befund: zu seinem Feld
Pfeil auf und ab in einer Zahl: ein Schritt; Bild auf und ab: zehn Schritte
Strg+C, Strg+V: Bereich einer Tabelle, zu und von einer Tabellenkalkulation
Strg+F: Tabelle filtern; Strg+Eingabe: für alle gewählten Zeilen setzen
Strg+Z, Strg+Y: rückgängig, wiederholen
F8: SI- oder US-Einheiten
Strg+I: Protokoll einlesen; Strg+R: Bericht als PDF
F6: nächster Teil der Seite</translation>
    </message>
    <message>
        <source>History of the plan</source>
        <translation>Verlauf des Plans</translation>
    </message>
    <message>
        <source>The plan as it was opened</source>
        <translation>Der Plan, wie er geöffnet wurde</translation>
    </message>
    <message>
        <source>%1 and %2 more</source>
        <translation>%1 und %2 weitere</translation>
    </message>
    <message>
        <source>Import drawing</source>
        <translation>Zeichnung importieren</translation>
    </message>
    <message>
        <source>Drawings (*.step *.stp *.p21);;All files (*)</source>
        <translation>Zeichnungen (*.step *.stp *.p21);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Imported: %1 seams new, %2 moved; %3 lack something and weren&apos;t taken.</source>
        <translation>Importiert: %1 Nähte neu, %2 verschoben; %3 unvollständig und nicht übernommen.</translation>
    </message>
    <message>
        <source>Import dra&amp;wing …</source>
        <translation>Zeichnun&amp;g importieren …</translation>
    </message>
    <message>
        <source>&amp;Tour</source>
        <translation>&amp;Rundgang</translation>
    </message>
    <message>
        <source>&amp;Handbook</source>
        <translation>&amp;Handbuch</translation>
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
        <source>Later</source>
        <translation>Später</translation>
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
        <translation>Zeigt die Zykluszeit wieder allein</translation>
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
        <translation>Die Reihenfolge ist die des Plans: Zykluszeit %1. Rückgängig holt die vorige zurück.</translation>
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
        <translation>; Zykluszeit %1 (%2)</translation>
    </message>
    <message>
        <source>; refused: expected %1</source>
        <translation>; abgelehnt: erwartet %1</translation>
    </message>
    <message>
        <source>Only %1 reaches %2.</source>
        <translation>Nur %1 erreicht %2.</translation>
    </message>
    <message>
        <source>Welds the chosen pass before what its robot welds before it</source>
        <translation>Schweißt die gewählte Raupe vor dem, was ihr Roboter vor ihr schweißt</translation>
    </message>
    <message>
        <source>Welds the chosen pass after what its robot welds next</source>
        <translation>Schweißt die gewählte Raupe nach dem, was ihr Roboter als Nächstes schweißt</translation>
    </message>
    <message>
        <source>Length of the search</source>
        <translation>Dauer der Suche</translation>
    </message>
    <message>
        <source>After so many seconds the search ends by itself</source>
        <translation>Nach so vielen Sekunden endet die Suche von selbst</translation>
    </message>
    <message>
        <source>Searches order, robots and directions of the shortest cycle, as long as the field says or until you stop it</source>
        <translation>Sucht Reihenfolge, Roboter und Richtungen der kürzesten Zykluszeit, so lange das Feld sagt oder bis Sie anhalten</translation>
    </message>
    <message>
        <source>%1, pass %2</source>
        <translation>%1, Raupe %2</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::Page</name>
    <message>
        <source>Explain</source>
        <translation>Erklären</translation>
    </message>
    <message>
        <source>Go to finding</source>
        <translation>Zum Befund</translation>
    </message>
    <message>
        <source>Open schedule %1</source>
        <translation>Schweißanweisung %1 öffnen</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::PasteDialog</name>
    <message>
        <source>Rows: %1. Cells: %2.</source>
        <translation>Zeilen: %1. Zellen: %2.</translation>
    </message>
    <message>
        <source>New rows: %1.</source>
        <translation>Neue Zeilen: %1.</translation>
    </message>
    <message>
        <source>Left out, because their values are derived: %1.</source>
        <translation>Ausgelassen, weil ihre Werte abgeleitet sind: %1.</translation>
    </message>
    <message>
        <source>Refused: %1. Nothing is pasted.</source>
        <translation>Abgelehnt: %1. Nichts wird eingefügt.</translation>
    </message>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>What the paste changes</source>
        <translation>Was das Einfügen ändert</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>So lassen, wie es ist</translation>
    </message>
    <message>
        <source>Refused. %1: %2</source>
        <translation>Abgelehnt. %1: %2</translation>
    </message>
    <message>
        <source>%1: %2 → %3</source>
        <translation>%1: %2 → %3</translation>
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
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Rename …</source>
        <translation>Umbenennen …</translation>
    </message>
    <message>
        <source>The plan</source>
        <translation>Der Plan</translation>
    </message>
    <message>
        <source>It can&apos;t be added: %1</source>
        <translation>Das kann nicht hinzugefügt werden: %1</translation>
    </message>
    <message>
        <source>Two robots, a positioner, two stations</source>
        <translation>Zwei Roboter, ein Positionierer, zwei Stationen</translation>
    </message>
    <message>
        <source>Add a starter cell</source>
        <translation>Anfangszelle anlegen</translation>
    </message>
    <message>
        <source>Blank</source>
        <translation>Leer</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::PointsDialog</name>
    <message>
        <source>Add point</source>
        <translation>Punkt hinzufügen</translation>
    </message>
    <message>
        <source>Remove point</source>
        <translation>Punkt entfernen</translation>
    </message>
    <message>
        <source>Take these points</source>
        <translation>Diese Punkte nehmen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::RecordBrowser</name>
    <message>
        <source>Stored passes</source>
        <translation>Gespeicherte Raupen</translation>
    </message>
    <message>
        <source>Serial number</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>Of the unit</source>
        <translation>Der Einheit</translation>
    </message>
    <message>
        <source>Welder</source>
        <translation>Schweißer</translation>
    </message>
    <message>
        <source>Of a manual seam, or a logged welder or operator</source>
        <translation>Einer Handnaht, oder ein protokollierter Schweißer oder Bediener</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Los</translation>
    </message>
    <message>
        <source>A kept column whose name ends in lot, such as wire_lot</source>
        <translation>Eine mitgeführte Spalte, deren Name auf lot endet, wie wire_lot</translation>
    </message>
    <message>
        <source>Robot</source>
        <translation>Roboter</translation>
    </message>
    <message>
        <source>As the log names it</source>
        <translation>Wie ihn das Protokoll nennt</translation>
    </message>
    <message>
        <source>Schedule</source>
        <translation>Schweißanweisung</translation>
    </message>
    <message>
        <source>By which it was judged</source>
        <translation>Nach dem beurteilt wurde</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>A day such as 2026-03-02, or a time such as 2026-03-02T06:00:00Z</source>
        <translation>Ein Tag wie 2026-03-02 oder eine Zeit wie 2026-03-02T06:00:00Z</translation>
    </message>
    <message>
        <source>To</source>
        <translation>Bis</translation>
    </message>
    <message>
        <source>A day with all of it, or a time</source>
        <translation>Ein Tag mit seinem Ende, oder eine Zeit</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Looks for the stored passes (Enter)</source>
        <translation>Sucht die gespeicherten Raupen (Eingabetaste)</translation>
    </message>
    <message>
        <source>Next page</source>
        <translation>Nächste Seite</translation>
    </message>
    <message>
        <source>The next %1 passes</source>
        <translation>Die nächsten %1 Raupen</translation>
    </message>
    <message>
        <source>Disposition …</source>
        <translation>Entscheidung …</translation>
    </message>
    <message>
        <source>What becomes of a pass that failed or was left undecided</source>
        <translation>Was aus einer Raupe wird, die nicht bestand oder unentschieden blieb</translation>
    </message>
    <message>
        <source>Correct …</source>
        <translation>Berichtigen …</translation>
    </message>
    <message>
        <source>Says what a value should have been; the old one stays readable</source>
        <translation>Sagt, was ein Wert hätte sein sollen; der alte bleibt lesbar</translation>
    </message>
    <message>
        <source>Sign off …</source>
        <translation>Abzeichnen …</translation>
    </message>
    <message>
        <source>Signs the record with a person&apos;s own key</source>
        <translation>Unterschreibt den Nachweis mit dem eigenen Schlüssel einer Person</translation>
    </message>
    <message>
        <source>Note …</source>
        <translation>Notiz …</translation>
    </message>
    <message>
        <source>Writes a note about the record or the store</source>
        <translation>Schreibt eine Notiz zum Nachweis oder zum Speicher</translation>
    </message>
    <message>
        <source>Calibration …</source>
        <translation>Kalibrierung …</translation>
    </message>
    <message>
        <source>Writes that an instrument was calibrated</source>
        <translation>Schreibt, dass ein Messgerät kalibriert wurde</translation>
    </message>
    <message>
        <source>Record of the shift …</source>
        <translation>Nachweis der Schicht …</translation>
    </message>
    <message>
        <source>Writes what was welded between From and To as PDF</source>
        <translation>Schreibt als PDF, was zwischen Von und Bis geschweißt wurde</translation>
    </message>
    <message>
        <source>Record of the seam …</source>
        <translation>Nachweis der Naht …</translation>
    </message>
    <message>
        <source>Writes the chosen seam over time as PDF</source>
        <translation>Schreibt die gewählte Naht über die Zeit als PDF</translation>
    </message>
    <message>
        <source>Certificate …</source>
        <translation>Bescheinigung …</translation>
    </message>
    <message>
        <source>Writes the chosen unit&apos;s certificate of conformity as PDF</source>
        <translation>Schreibt die Konformitätsbescheinigung der gewählten Einheit als PDF</translation>
    </message>
    <message>
        <source>Open a record store on the page beside first.</source>
        <translation>Zuerst auf der Seite daneben einen Speicher öffnen.</translation>
    </message>
    <message>
        <source>Say what is looked for, or leave all empty, and press Enter.</source>
        <translation>Angeben, was gesucht wird, oder alles leer lassen, dann Eingabetaste.</translation>
    </message>
    <message>
        <source>Looking …</source>
        <translation>Suche …</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::RecordForm</name>
    <message>
        <source>Why it wasn&apos;t written</source>
        <translation>Warum nichts geschrieben wurde</translation>
    </message>
    <message>
        <source>Who</source>
        <translation>Wer</translation>
    </message>
    <message>
        <source>your name, kept with the record</source>
        <translation>Ihr Name, der im Nachweis steht</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>the reason, kept with the record</source>
        <translation>der Grund, der im Nachweis steht</translation>
    </message>
    <message>
        <source>Store&apos;s key (optional)</source>
        <translation>Schlüssel des Speichers (freigestellt)</translation>
    </message>
    <message>
        <source>file, where it isn&apos;t in its usual place</source>
        <translation>Datei, wo er nicht an seinem üblichen Ort liegt</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::RecordForms</name>
    <message>
        <source>Record %1 (%2) is written.</source>
        <translation>Nachweis %1 (%2) ist geschrieben.</translation>
    </message>
    <message>
        <source>Disposition</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>Decision</source>
        <translation>Beschluss</translation>
    </message>
    <message>
        <source>repair</source>
        <translation>ausbessern</translation>
    </message>
    <message>
        <source>use as it is</source>
        <translation>so verwenden</translation>
    </message>
    <message>
        <source>scrap</source>
        <translation>verschrotten</translation>
    </message>
    <message>
        <source>Schedule of the repair</source>
        <translation>Schweißanweisung der Ausbesserung</translation>
    </message>
    <message>
        <source>needed for a repair</source>
        <translation>nötig zum Ausbessern</translation>
    </message>
    <message>
        <source>Record of the re-test</source>
        <translation>Nachweis der Nachprüfung</translation>
    </message>
    <message>
        <source>once it passed; empty: not yet</source>
        <translation>sobald sie bestand; leer: noch nicht</translation>
    </message>
    <message>
        <source>Write the disposition</source>
        <translation>Entscheidung schreiben</translation>
    </message>
    <message>
        <source>Cause, of all passes of the unit</source>
        <translation>Ursache, für alle Raupen der Einheit</translation>
    </message>
    <message>
        <source>Correction</source>
        <translation>Berichtigung</translation>
    </message>
    <message>
        <source>Member</source>
        <translation>Angabe</translation>
    </message>
    <message>
        <source>What it should have been</source>
        <translation>Was es hätte sein sollen</translation>
    </message>
    <message>
        <source>Write the correction</source>
        <translation>Berichtigung schreiben</translation>
    </message>
    <message>
        <source>Sign-off</source>
        <translation>Abzeichnung</translation>
    </message>
    <message>
        <source>Your own key (optional)</source>
        <translation>Ihr eigener Schlüssel (freigestellt)</translation>
    </message>
    <message>
        <source>file; empty: person.pem in the folder of keys, made where there is none</source>
        <translation>Datei; leer: person.pem im Ordner der Schlüssel, wird angelegt, wo keine ist</translation>
    </message>
    <message>
        <source>Sign off</source>
        <translation>Abzeichnen</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>About record</source>
        <translation>Zu Nachweis</translation>
    </message>
    <message>
        <source>its number; empty: about the store</source>
        <translation>seine Nummer; leer: zum Speicher</translation>
    </message>
    <message>
        <source>Write the note</source>
        <translation>Notiz schreiben</translation>
    </message>
    <message>
        <source>Calibration</source>
        <translation>Kalibrierung</translation>
    </message>
    <message>
        <source>Instrument</source>
        <translation>Messgerät</translation>
    </message>
    <message>
        <source>its id in the plan</source>
        <translation>seine Kennung im Plan</translation>
    </message>
    <message>
        <source>Certificate</source>
        <translation>Bescheinigung</translation>
    </message>
    <message>
        <source>its number, or its file</source>
        <translation>ihre Nummer oder ihre Datei</translation>
    </message>
    <message>
        <source>Calibrated on</source>
        <translation>Kalibriert am</translation>
    </message>
    <message>
        <source>Due</source>
        <translation>Fällig</translation>
    </message>
    <message>
        <source>As found</source>
        <translation>Vorgefunden</translation>
    </message>
    <message>
        <source>not stated</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>in tolerance</source>
        <translation>in der Toleranz</translation>
    </message>
    <message>
        <source>out of tolerance</source>
        <translation>außerhalb der Toleranz</translation>
    </message>
    <message>
        <source>Write the calibration</source>
        <translation>Kalibrierung schreiben</translation>
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
        <translation>Raupen</translation>
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
        <translation>Was geschweißt wurde und die Einheit unvollständig lässt, mit der Zahl der Raupen je Grund</translation>
    </message>
    <message>
        <source>Missing passes</source>
        <translation>Fehlende Raupen</translation>
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
        <source>Planned and actual</source>
        <translation>Soll und Ist</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Nachweise</translation>
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
        <translation>Raupen der Einheit</translation>
    </message>
    <message>
        <source>Import log …</source>
        <translation>Protokoll einlesen …</translation>
    </message>
    <message>
        <source>Reads arc logs and judges each pass by the plan (Ctrl+I)</source>
        <translation>Liest Lichtbogenprotokolle und beurteilt jede Raupe nach dem Plan (Strg+I)</translation>
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
        <source>Reading %1 …</source>
        <translation>Liest %1 …</translation>
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
        <source>Charts</source>
        <translation>Regelkarten</translation>
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
    <message>
        <source>Stored passes</source>
        <translation>Gespeicherte Raupen</translation>
    </message>
    <message>
        <source>Import with …</source>
        <translation>Einlesen mit …</translation>
    </message>
    <message>
        <source>The same with a columns file, its job numbers, units by time or manual seams</source>
        <translation>Dasselbe mit Spaltendatei, deren Jobnummern, Einheiten nach Zeit oder Handnähten</translation>
    </message>
    <message>
        <source>Open a record store and choose a unit first.</source>
        <translation>Zuerst einen Speicher öffnen und eine Einheit wählen.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::RenameDialog</name>
    <message>
        <source>Rename</source>
        <translation>Umbenennen</translation>
    </message>
    <message>
        <source>New id of %1:</source>
        <translation>Neue Kennung von %1:</translation>
    </message>
    <message>
        <source>New id</source>
        <translation>Neue Kennung</translation>
    </message>
    <message>
        <source>Nothing refers to it.</source>
        <translation>Nichts bezieht sich darauf.</translation>
    </message>
    <message>
        <source>Fields that refer to it and are renamed with it: %1</source>
        <translation>Felder, die sich darauf beziehen und mit umbenannt werden: %1</translation>
    </message>
    <message>
        <source>What refers to it</source>
        <translation>Was sich darauf bezieht</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>So lassen, wie es ist</translation>
    </message>
    <message>
        <source>Rename %1</source>
        <translation>%1 umbenennen</translation>
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
        <translation>Raupen</translation>
    </message>
    <message>
        <source>Passes that are welded by it</source>
        <translation>Raupen, die damit geschweißt werden</translation>
    </message>
    <message>
        <source>Worst finding on it and on the passes welded by it that this page lists; behind it, where it is worse, what another page has on them</source>
        <translation>Schlimmster Befund der Schweißanweisung und der damit geschweißten Raupen, den diese Seite aufführt; dahinter, wo er schlimmer ist, der einer anderen Seite</translation>
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
        <source>Pulse</source>
        <translation>Puls</translation>
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
        <translation>Schweißanweisungen (WPS)</translation>
    </message>
    <message>
        <source>A schedule is a draft until it is qualified by test under the governing code and approved by a responsible person.</source>
        <translation>Eine Schweißanweisung ist ein Entwurf, bis sie nach der geltenden Norm qualifiziert und von verantwortlicher Seite freigegeben ist.</translation>
    </message>
    <message>
        <source>Fields of the schedule</source>
        <translation>Felder der Schweißanweisung</translation>
    </message>
    <message>
        <source>Passes welded by the schedule</source>
        <translation>Raupen nach dieser Schweißanweisung</translation>
    </message>
    <message>
        <source>Difference to</source>
        <translation>Unterschied zu</translation>
    </message>
    <message>
        <source>Schedule to compare with</source>
        <translation>Schweißanweisung zum Vergleich</translation>
    </message>
    <message>
        <source>Difference of two schedules</source>
        <translation>Unterschied zweier Schweißanweisungen</translation>
    </message>
    <message>
        <source>Add schedule</source>
        <translation>Neue Schweißanweisung</translation>
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
        <translation>Die Schweißanweisung aus dem Plan nehmen</translation>
    </message>
    <message>
        <source>A schedule says how a pass is welded. Open the demo to look around, or start a new plan: it begins with one draft.</source>
        <translation>Eine Schweißanweisung sagt, wie eine Raupe geschweißt wird. Das Beispiel öffnen oder einen neuen Plan beginnen: er bringt einen Entwurf mit.</translation>
    </message>
    <message>
        <source>Passes welded by %1: %2</source>
        <translation>Raupen nach %1: %2</translation>
    </message>
    <message>
        <source>There is no schedule to begin from: start a new plan.</source>
        <translation>Keine Schweißanweisung zum Anfangen: einen neuen Plan beginnen.</translation>
    </message>
    <message>
        <source>Remove schedule</source>
        <translation>Schweißanweisung entfernen</translation>
    </message>
    <message>
        <source>The schedule can&apos;t go: %1</source>
        <translation>Die Schweißanweisung kann nicht weg: %1</translation>
    </message>
    <message>
        <source>Other plan …</source>
        <translation>Anderer Plan …</translation>
    </message>
    <message>
        <source>Compares with the schedules of another plan file</source>
        <translation>Vergleicht mit den Schweißanweisungen einer anderen Plandatei</translation>
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
        <translation>Macht eine geprüfte oder freigegebene Schweißanweisung nach einer Frage wieder zum Entwurf</translation>
    </message>
    <message>
        <source>%1 stays as it is: a change goes into a new revision.</source>
        <translation>%1 bleibt, wie es ist: Eine Änderung kommt in eine neue Ausgabe.</translation>
    </message>
    <message>
        <source>In force today: %1.</source>
        <translation>Heute gilt: %1.</translation>
    </message>
    <message>
        <source>Print sheet …</source>
        <translation>Blatt drucken …</translation>
    </message>
    <message>
        <source>The sheets of the chosen schedules as PDF, a page each to sign</source>
        <translation>Die Blätter der gewählten Schweißanweisungen als PDF, je eine Seite zum Unterschreiben</translation>
    </message>
    <message>
        <source>A schedule says how a pass is welded. Add the first one, or import a list of schedules.</source>
        <translation>Eine Schweißanweisung sagt, wie eine Raupe geschweißt wird. Die erste anlegen oder eine Liste importieren.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::SeamImportDialog</name>
    <message>
        <source>Import list</source>
        <translation>Liste importieren</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>List of</source>
        <translation>Liste von</translation>
    </message>
    <message>
        <source>Seams</source>
        <translation>Nähte</translation>
    </message>
    <message>
        <source>Schedules</source>
        <translation>Schweißanweisungen</translation>
    </message>
    <message>
        <source>Weldment of rows that name none</source>
        <translation>Bauteil der Zeilen, die keines nennen</translation>
    </message>
    <message>
        <source>Base metal of new seams that name none</source>
        <translation>Grundwerkstoff neuer Nähte, die keinen nennen</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
    <message>
        <source>Column</source>
        <translation>Spalte</translation>
    </message>
    <message>
        <source>Heading</source>
        <translation>Überschrift</translation>
    </message>
    <message>
        <source>Read as</source>
        <translation>Gelesen als</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Columns</source>
        <translation>Spalten</translation>
    </message>
    <message>
        <source>Row</source>
        <translation>Zeile</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Zustand</translation>
    </message>
    <message>
        <source>Heading or key</source>
        <translation>Überschrift oder Schlüssel</translation>
    </message>
    <message>
        <source>Before, or found</source>
        <translation>Vorher oder gefunden</translation>
    </message>
    <message>
        <source>After, or expected</source>
        <translation>Nachher oder erwartet</translation>
    </message>
    <message>
        <source>Preview</source>
        <translation>Vorschau</translation>
    </message>
    <message>
        <source>&amp;Columns</source>
        <translation>S&amp;palten</translation>
    </message>
    <message>
        <source>&amp;Preview</source>
        <translation>&amp;Vorschau</translation>
    </message>
    <message>
        <source>Leave refused rows out and import the others</source>
        <translation>Abgelehnte Zeilen auslassen und die anderen importieren</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Importieren</translation>
    </message>
    <message>
        <source>Reading …</source>
        <translation>Wird gelesen …</translation>
    </message>
    <message>
        <source>%1 new, %2 changed, %3 unchanged, %4 refused</source>
        <translation>%1 neu, %2 geändert, %3 unverändert, %4 abgelehnt</translation>
    </message>
    <message>
        <source>Read %1 as</source>
        <translation>%1 lesen als</translation>
    </message>
    <message>
        <source>not read</source>
        <translation>nicht gelesen</translation>
    </message>
    <message>
        <source>Unit of %1</source>
        <translation>Einheit von %1</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>abgelehnt</translation>
    </message>
    <message>
        <source>changed</source>
        <translation>geändert</translation>
    </message>
    <message>
        <source>new</source>
        <translation>neu</translation>
    </message>
    <message>
        <source>… and more</source>
        <translation>… und weitere</translation>
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
        <translation>Nähte in Draufsicht und Seitenansicht</translation>
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
        <translation>Draufsicht</translation>
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
        <translation>Raupen der Naht</translation>
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
        <translation>Draufsicht</translation>
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
    <message>
        <source>3D</source>
        <translation>3D</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>A fit begins with the schedule of a seam: choose a seam that has one.</source>
        <translation>Einstellen beginnt mit der Schweißanweisung einer Naht: eine Naht wählen, die eine hat.</translation>
    </message>
    <message>
        <source>Schedule of %1</source>
        <translation>Schweißanweisung von %1</translation>
    </message>
    <message>
        <source>Weld with it</source>
        <translation>Damit schweißen</translation>
    </message>
    <message>
        <source>Weld with %1</source>
        <translation>Mit %1 schweißen</translation>
    </message>
    <message>
        <source>Choose schedule …</source>
        <translation>Schweißanweisung wählen …</translation>
    </message>
    <message>
        <source>Fit selected seams …</source>
        <translation>Gewählte Nähte einstellen …</translation>
    </message>
    <message>
        <source>Fit this seam …</source>
        <translation>Diese Naht einstellen …</translation>
    </message>
    <message>
        <source>The plan has no seam yet: add the first one, or import a list of seams.</source>
        <translation>Der Plan hat noch keine Naht: die erste anlegen oder eine Liste von Nähten importieren.</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::SetDialog</name>
    <message>
        <source>Set for all selected rows</source>
        <translation>Für alle gewählten Zeilen setzen</translation>
    </message>
    <message>
        <source>%1, rows: %2</source>
        <translation>%1, Zeilen: %2</translation>
    </message>
    <message>
        <source>Set</source>
        <translation>Setzen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
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
        <translation>Schweißanweisung</translation>
    </message>
    <message>
        <source>Quantity</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Passes</source>
        <translation>Raupen</translation>
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
        <translation>Untere 95-%-Schranke von Ppk bei so wenigen Raupen</translation>
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
        <translation>vollständig: alle Raupen da, nichts offen, keine neu zu schweißen; unbekannt: Kein Plan sagte, was die Einheit braucht</translation>
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
        <translation>Raupen</translation>
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
        <translation>Abweichungen ohne Abschluss und Gründe, die Raupen offen ließen</translation>
    </message>
    <message>
        <source>Missing passes</source>
        <translation>Fehlende Raupen</translation>
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
    <name>seamtakt::desk::TableFilter</name>
    <message>
        <source>Rows that have these words</source>
        <translation>Zeilen mit diesen Wörtern</translation>
    </message>
    <message>
        <source>Filter of the table</source>
        <translation>Filter der Tabelle</translation>
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
        <source>%1 behind the arc, %2 beside the seam: %3 in one plate</source>
        <translation>%1 hinter dem Lichtbogen, %2 neben der Naht: %3 in einem Blech</translation>
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
        <source>, t8/5 of one plate %1 s</source>
        <translation>, t8/5 eines Blechs %1 s</translation>
    </message>
    <message>
        <source>time after the arc has passed, s</source>
        <translation>Zeit nach dem Lichtbogen, s</translation>
    </message>
    <message>
        <source>in one plate (%1)</source>
        <translation>in einem Blech (%1)</translation>
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
        <source>tip change</source>
        <translation>Düsenwechsel</translation>
    </message>
    <message>
        <source>spool change</source>
        <translation>Spulenwechsel</translation>
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
        <translation>Zykluszeit %1</translation>
    </message>
    <message>
        <source>cell</source>
        <translation>Zelle</translation>
    </message>
    <message>
        <source>, pass %1</source>
        <translation>, Raupe %1</translation>
    </message>
    <message>
        <source>%1%2
%3 to %4 s</source>
        <translation>%1%2
%3 bis %4 s</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::TourPanel</name>
    <message>
        <source>Tour</source>
        <translation>Rundgang</translation>
    </message>
    <message>
        <source>&amp;Back</source>
        <translation>&amp;Zurück</translation>
    </message>
    <message>
        <source>S&amp;kip the tour</source>
        <translation>Rundgang ü&amp;berspringen</translation>
    </message>
    <message>
        <source>Seams: what the drawing asks for</source>
        <translation>Nähte: was die Zeichnung verlangt</translation>
    </message>
    <message>
        <source>Each row is a seam, with a mark for its worst finding. The picture shows where it lies. The strip above is the chain of the job: each link has one figure and the mark of its worst finding. Ctrl+1 to Ctrl+7 open them.</source>
        <translation>Jede Zeile ist eine Naht, mit dem Zeichen ihres schlimmsten Befunds. Das Bild zeigt, wo sie liegt. Die Leiste oben ist die Kette des Auftrags: Jedes Glied hat eine Zahl und das Zeichen seines schlimmsten Befunds. Strg+1 bis Strg+7 öffnen sie.</translation>
    </message>
    <message>
        <source>Schedules: how it is welded</source>
        <translation>Schweißanweisungen: wie geschweißt wird</translation>
    </message>
    <message>
        <source>Wire feed, voltage, travel speed and their limits. An approved schedule is locked: who changes it gets a new revision as a draft.</source>
        <translation>Drahtvorschub, Spannung, Schweißgeschwindigkeit und ihre Grenzen. Eine freigegebene Anweisung ist gesperrt: Wer sie ändert, erhält eine neue Revision als Entwurf.</translation>
    </message>
    <message>
        <source>Heat, and why</source>
        <translation>Wärme, und warum</translation>
    </message>
    <message>
        <source>The operating window shows which settings keep all limits. F1 explains the value in focus: formula, numbers, source, range. Every number of the desk has such an explanation.</source>
        <translation>Das Arbeitsfenster zeigt, welche Einstellungen alle Grenzen halten. F1 erklärt den Wert im Fokus: Formel, Zahlen, Quelle, Geltungsbereich. Jede Zahl hier hat eine solche Erklärung.</translation>
    </message>
    <message>
        <source>Cell: who welds what, and when</source>
        <translation>Zelle: wer was wann schweißt</translation>
    </message>
    <message>
        <source>The robots&apos; timelines against takt. “Search best order” looks for a shorter cycle; the bound says how much there is to be had. A planned timeline is no proof that a motion is safe.</source>
        <translation>Die Abläufe der Roboter gegen den Takt. „Beste Reihenfolge suchen“ findet einen kürzeren Zyklus; die Schranke sagt, wie viel zu holen ist. Ein geplanter Ablauf beweist nicht, dass eine Bewegung sicher ist.</translation>
    </message>
    <message>
        <source>Records: what was welded</source>
        <translation>Nachweise: was geschweißt wurde</translation>
    </message>
    <message>
        <source>Ctrl+I reads a log of the arcs: a verdict a pass, and each unit beside its plan. A store keeps them signed.</source>
        <translation>Strg+I liest ein Protokoll der Lichtbögen: ein Urteil je Raupe, und jede Einheit neben ihrem Plan. Ein Speicher hält sie unterschrieben fest.</translation>
    </message>
    <message>
        <source>Findings, and paper</source>
        <translation>Befunde, und Papier</translation>
    </message>
    <message>
        <source>All findings in one list; Enter goes to the field. Ctrl+R writes the report. All figures are estimates: qualification by test decides. The handbook and this tour are in the Help menu.</source>
        <translation>Alle Befunde in einer Liste; Eingabe führt zum Feld. Strg+R schreibt den Bericht. Alle Zahlen sind Schätzungen: Die Qualifizierung durch Prüfung entscheidet. Handbuch und Rundgang stehen im Menü Hilfe.</translation>
    </message>
    <message>
        <source>Step %1 of %2</source>
        <translation>Schritt %1 von %2</translation>
    </message>
    <message>
        <source>&amp;Done</source>
        <translation>&amp;Fertig</translation>
    </message>
    <message>
        <source>Ne&amp;xt</source>
        <translation>&amp;Weiter</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::TraceView</name>
    <message>
        <source>Trace of the pass</source>
        <translation>Aufzeichnung der Raupe</translation>
    </message>
    <message>
        <source>Plus and minus zoom, arrow keys move, Home shows all. The table of passes has means and verdicts.</source>
        <translation>Plus und Minus vergrößern, Pfeiltasten schieben, Pos1 zeigt alles. Die Tabelle der Raupen hat Mittel und Urteile.</translation>
    </message>
    <message>
        <source>outside for %1: %2</source>
        <translation>außerhalb über %1: %2</translation>
    </message>
    <message>
        <source>time since the first sample, s</source>
        <translation>Zeit seit dem ersten Messwert, s</translation>
    </message>
    <message>
        <source>Choose a pass to see what was logged of it.</source>
        <translation>Eine Raupe wählen, um ihre Aufzeichnung zu sehen.</translation>
    </message>
    <message>
        <source>line %1, %2 s</source>
        <translation>Zeile %1, %2 s</translation>
    </message>
</context>
<context>
    <name>seamtakt::desk::UnitView</name>
    <message>
        <source>from %1</source>
        <translation>ab %1</translation>
    </message>
    <message>
        <source>up to %1</source>
        <translation>bis %1</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
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
        <source>Hatched: a limit is not kept. Solid lines: leg; dashed: heat input; dotted: t8/5 by EN 1011-2.</source>
        <translation>Schraffiert: eine Grenze ist verletzt. Linien: Schenkel; gestrichelt: Wärmeeinbringung; gepunktet: t8/5 nach EN 1011-2.</translation>
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
        <source>What was logged</source>
        <translation>Was aufgezeichnet wurde</translation>
    </message>
    <message>
        <source>Choose a number of the pass, such as its heat input.</source>
        <translation>Wählen Sie eine Zahl der Raupe, etwa ihre Wärmeeinbringung.</translation>
    </message>
    <message>
        <source>%1 is given or counted: no formula stands behind it.</source>
        <translation>%1 ist gegeben oder gezählt: dahinter steht keine Formel.</translation>
    </message>
</context>
</TS>
