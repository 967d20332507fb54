#!/usr/bin/env python3
"""Runs packaging/examples/heat_inputs.bas in soffice without a window, on a sheet of its own.

    macro_check.py heat_inputs.bas FOLDER       FOLDER: an empty one; SEAMTAKT names the program
Prints column E of the sheet, a line each.
"""
import csv
import os
import subprocess
import sys
from xml.sax.saxutils import escape

XLB = """<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false">
 <library:element library:name="Seamtakt"/>
</library:library>
"""
XBA = """<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Seamtakt" script:language="StarBasic">%s</script:module>
"""
ROWS = [("Voltage", "Current", "Speed", "Process"), ("24.8", "205", "5", "135"), ("29.5", "300", "8.25", "135"),
        ('2"4 \\ parrots', "205", "5", "135"), ("24.8", "205", "30cm/min", "135")]


def write(path, text):
    os.makedirs(os.path.dirname(path), exist_ok=True)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)


def main(module, folder):
    sheet = os.path.join(folder, "sheet.csv")
    with open(sheet, "w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(ROWS)
    office = ["soffice", "--headless", "--norestore", "-env:UserInstallation=file://" + os.path.join(folder, "profile")]
    run = lambda *words: subprocess.run([*office, *words], check=True, timeout=200, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                        env=dict(os.environ, TMPDIR=folder))
    run("--convert-to", "ods", "--outdir", folder, sheet)
    ods = os.path.join(folder, "sheet.ods")
    # The first start has made the person's library; the macro goes into it.
    basic = os.path.join(folder, "profile/user/basic/Standard")
    with open(module, encoding="utf-8") as file:
        write(os.path.join(basic, "Seamtakt.xba"), XBA % escape(file.read()))
    write(os.path.join(basic, "script.xlb"), XLB)
    run('macro:///Standard.Seamtakt.HeatInputsOfFile("%s")' % ods)
    os.remove(sheet)
    run("--convert-to", "csv", "--outdir", folder, ods)
    with open(sheet, encoding="utf-8", newline="") as file:
        for row in list(csv.reader(file))[1:]:
            print(row[4] if len(row) > 4 else "")
    left = [name for name in os.listdir(folder) if name.startswith("seamtakt-")]
    assert not left, left


if __name__ == "__main__":
    main(*sys.argv[1:])
