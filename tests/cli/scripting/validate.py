#!/usr/bin/env python3
"""Every --json output of the demo against the shipped schemas.

    validate.py PROGRAM SOURCE_FOLDER SCRATCH_FOLDER

Prints one line a command; exits 1 at the first document that doesn't validate. A schema that accepts anything would
be no test: each document is also refused once a member is added to it and once one is taken away.
"""
import json, os, subprocess, sys
import jsonschema

program, source, scratch = sys.argv[1:]
demo = os.path.join(source, "reference/demo/")
plan = demo + "ground-equipment.weldplan.json"
schemas = {name: json.load(open(os.path.join(source, "reference/schemas", name + ".schema.json"), encoding="utf-8"))
           for name in ("results", "serve")}
for schema in schemas.values():
    jsonschema.Draft202012Validator.check_schema(schema)
store = "sqlite:" + os.path.join(scratch, "records.sqlite")
key = os.path.join(scratch, "keys", "store.pem")
os.mkdir(os.path.join(scratch, "keys"))
hand = ["--key", key, "--who", "a test", "--why", "a trial"]


def validator(name, schema="results"):
    definitions = schemas[schema]["$defs"]
    return jsonschema.Draft202012Validator({"$defs": definitions, "$ref": "#/$defs/" + name})


def run(*words):
    done = subprocess.run([program, *words, "--json"], capture_output=True, text=True, encoding="utf-8")
    if done.returncode not in (0, 1):
        sys.exit("%s: %s" % (" ".join(words), done.stderr))
    return json.loads(done.stdout)


def check(name, document):
    problems = validator(name)
    error = next(problems.iter_errors(document), None)
    if error:
        sys.exit("%s: %s at %s" % (name, str(error.message)[:500], list(error.absolute_path)))
    first = next(iter(document))
    without = {member: value for member, value in document.items() if member != first}
    if problems.is_valid({**document, "invented_member": 1}) or problems.is_valid(without):
        sys.exit(name + ": its schema accepts what isn't such a result")
    print(name)


calc = [
    ["heat-input", "--voltage", "24.8V", "--u-voltage", "1%", "--current", "205", "--travel-speed", "30cm/min",
     "--process", "135", "--explain", "--monte-carlo", "100"],
    ["melting-rate", "--current", "205", "--extension", "15", "--wire-diameter", "1.2", "--wire-material", "mild-steel"],
    ["deposition", "--wire-diameter", "1.2", "--wire-feed", "9", "--density", "7.85", "--efficiency", "0.95", "--travel-speed", "8"],
    ["fillet", "--leg", "6", "--gap", "1"],
    ["fillet-minimum", "--thickness", "12"],
    ["groove", "--type", "single-v", "--thickness", "12", "--angle", "60", "--gap", "2"],
    ["penetration", "--current", "250", "--voltage", "27", "--travel-speed", "8"],
    ["transfer", "--wire-diameter", "1.2", "--wire-material", "mild-steel", "--gas", "M21", "--current", "280"],
    ["cooling-time", "--heat-input", "1.2", "--thickness", "10", "--preheat", "20"],
    ["carbon-equivalent", "--composition", "C=0.17,Mn=1.45,Si=0.3"],
    ["preheat", "--composition", "C=0.17,Mn=1.45,Si=0.3", "--thickness", "30", "--hydrogen", "5", "--heat-input", "1"],
    ["haz-hardness", "--composition", "C=0.17,Mn=1.45,Si=0.3", "--cooling-time", "10"],
    ["temperature", "--net-power", "4000", "--travel-speed", "5", "--x", "-10", "--y", "5", "--z", "0", "--preheat",
     "20", "--model", "thick", "--thickness", "20"],
    ["haz-width", "--heat-input", "1", "--thickness", "10", "--peak", "900"],
    ["interpass", "--heat-input", "1", "--thickness", "10", "--ambient", "20", "--interpass", "150"],
    ["distortion", "--type", "fillet-angular", "--flange-width", "100", "--leg", "6", "--thickness", "10"],
    ["tolerance", "--length", "500", "--class", "B", "--kind", "linear"],
    ["imperfection", "--level", "C", "--throat", "5", "--thickness", "8"],
    ["fillet-resistance", "--throat", "5", "--length", "100", "--count", "2", "--steel", "S355",
     "--force-along-weld", "50000"],
    ["qualification", "--basis", "iso15614-1", "--tested-heat-input", "1", "--tested-thickness", "10", "--joint",
     "butt", "--runs", "multi"],
    ["guard-band", "--value", "1", "--u", "0.1", "--lower", "0.5", "--upper", "1.5"],
    ["duty-cycle", "--rated-current", "400", "--rated-duty", "60", "--current", "300"],
    ["move-time", "--distance", "500", "--speed", "1000", "--acceleration", "5000"],
    ["takt", "--available", "8", "--demand", "24"],
]
for words in calc:
    check("calc-" + words[0], run("calc", *words))

log = demo + "arc-log.csv.gz"
check("evaluate", run("evaluate", plan))
check("evaluate", run("evaluate", plan, "--explain", "BD/S03/pass 1.heat_input_kJ_mm"))
check("cycle", run("cycle", plan))
check("cycle", run("cycle", plan, "--order", "best", "--steps", "20"))
check("cycle", run("cycle", plan, "--without-robot", "R2"))
check("line", run("line", plan, "--orders", demo + "orders.csv"))
check("line", run("line", plan, "--orders", demo + "orders-day.csv", "--level", "--carts", demo + "carts"))
check("kit", run("kit", plan, "--cart", demo + "carts/AE-26-0106.csv", "--weldment", "BD"))
seam = run("evaluate", plan)["passes"][0]
check("window", run("window", plan, "--schedule", seam["schedule"], "--seam", seam["weldment"] + "/" + seam["seam"]))
check("fit", run("fit", plan, "--seam", seam["weldment"] + "/" + seam["seam"]))
check("measure", run("measure", plan, "--weldment", "BD", "--points", demo + "points.csv"))
check("learn", run("learn", log, "--plan", plan))
other = os.path.join(scratch, "best.weldplan.json")
run("cycle", plan, "--order", "best", "--steps", "20", "--output", other)
check("diff", run("diff", plan, other))
check("merge", run("merge", plan, plan, other, "--output", os.path.join(scratch, "joined.weldplan.json")))
seams = os.path.join(scratch, "seams.csv")
subprocess.run([program, "export", plan, "--seams", seams], check=True, capture_output=True)
check("import", run("import", seams, "--into", plan, "--preview"))
check("audit", run("audit", log, "--plan", plan, "--manual", demo + "manual-seams.csv", "--store", store, *hand))

base = ["--store", store]
records = run("ledger", "list", *base)
check("ledger-list", records)
first = next(each for each in records["records"] if each["kind"] == "pass")
number = str(first["seq"])
check("ledger-show", run("ledger", "show", number, *base, "--proof"))
check("ledger-show", run("ledger", "show", number, *base, "--explain", "heat_input_kJ_mm"))
check("ledger-show", run("ledger", "show", "--unit", first["results"]["unit_serial"], *base))
check("ledger-head", run("ledger", "head", *base))
check("ledger-anchor", run("ledger", "anchor", *base))
check("ledger-anchor", run("ledger", "anchor", *base, *hand, "--append", os.path.join(scratch, "anchors.txt")))
check("ledger-key", run("ledger", "key", *base, "--key", key))
check("ledger-correct", run("ledger", "correct", number, "--set", "results.robot=R2", *base, *hand))
check("ledger-note", run("ledger", "note", *base, *hand))
check("ledger-sign", run("ledger", "sign", number, *base, *hand, "--person-key", os.path.join(scratch, "keys", "person.pem")))
check("ledger-retain", run("ledger", "retain", number, "--until", "2036-11-25", *base, *hand))
check("ledger-hold", run("ledger", "hold", number, *base, *hand))
held = max(each["seq"] for each in run("ledger", "list", *base, "--kind", "retention")["records"])
check("ledger-unhold", run("ledger", "unhold", str(held), *base, *hand))
check("ledger-calibrate", run("ledger", "calibrate", "--instrument", "R1-current", "--certificate", "C-1", "--date",
                              "2026-01-05", "--due", "2027-01-05", *base, *hand))
check("ledger-nonconformance", run("ledger", "nonconformance", *base))
check("ledger-nonconformance", run("ledger", "nonconformance", number, *base, *hand))
opened = max(each["seq"] for each in run("ledger", "nonconformance", *base)["nonconformances"])
check("ledger-disposition", run("ledger", "disposition", str(opened), "--decision", "use-as-is", *base, *hand))
check("ledger-void", run("ledger", "void", number, *base, *hand))
check("ledger-key", run("ledger", "key", "--rotate", *base, *hand))
bundle = os.path.join(scratch, "records.jsonl")
check("ledger-export", run("ledger", "export", "--output", bundle, *base))
check("ledger-import", run("ledger", "import", bundle, "--store", "sqlite:" + os.path.join(scratch, "copy.sqlite")))
check("ledger-timestamp", run("ledger", "timestamp", "--query", os.path.join(scratch, "head.tsq"), *base))
verified = run("ledger", "verify", *base)
check("ledger-verify", verified)
assert verified["trusted"], verified

# Lines of serve.
requests = [{"id": 1, "command": "calc takt", "arguments": {"available": "8h", "demand": 24}},
            {"id": "two", "command": "evaluate", "arguments": {"PLAN": plan, "weldment": "BD"}},
            {"command": "ledger list", "arguments": {"store": store, "limit": 2}}]
for request in requests:
    error = next(validator("request", "serve").iter_errors(request), None)
    if error:
        sys.exit("serve: %s" % str(error.message)[:500])
bad = [{"id": 1, "command": "paint"}, {"id": 3, "command": "calc takt", "arguments": {"demnd": 2}}, {"command": "evaluate"}]
for request in bad:
    if validator("request", "serve").is_valid(request):
        sys.exit("serve: its schema accepts %s" % request)
lines = "".join(json.dumps(request) + "\n" for request in requests + bad)
answers = subprocess.run([program, "serve", "--stdio"], input=lines, capture_output=True, text=True, encoding="utf-8").stdout
answers = [json.loads(line) for line in answers.splitlines()]
assert len(answers) == len(requests) + len(bad)
for answer, asked in zip(answers, requests + bad):
    error = next(validator("answer", "serve").iter_errors(answer), None)
    if error:
        sys.exit("serve: %s" % str(error.message)[:500])
    assert ("error" in answer) == (asked in bad), answer
print("serve")
