#!/usr/bin/env python3
"""Second verifier of a ledger: an SQLite store, or a bundle (.jsonl); needs the standard library and openssl alone.
Exit 0: trusted ("unanchored" where neither --anchor nor --pub is given), 1: not trusted, 2: not an anchor, 3: it can't be read."""
import argparse, datetime, hashlib, itertools, json, os, re, sqlite3, subprocess, sys, tempfile
KINDS = set("genesis schedule calibration ingest pass manual correction void signoff key key_revoke migrate anchor note "
            "nonconformance disposition person judgement retention timestamp".split())
SCHEMA = "5a901586585cfd4117d5995a53abb374b5ef4a85b0c524311035bc7f9a3f036e"  # of type, name, table and text of all in sqlite_schema
problems, notes, mistyped = [], [], []
def bad(seq, text): problems.append((seq, text))
def sha(data): return hashlib.sha256(data).digest()
def openssl(*words, data=b""): return subprocess.run(["openssl", *words], input=data, capture_output=True)
def key_id(pem): return sha(openssl("pkey", "-pubin", "-outform", "DER", data=pem.encode()).stdout).hex()

def number(value):
    """As ECMAScript writes it; Python's repr has the same shortest digits."""
    whole, _, exponent = repr(abs(float(value))).partition("e")
    whole, _, part = whole.partition(".")
    digits, point = whole + part, len(whole) + int(exponent or 0)
    point -= len(digits) - len(digits.lstrip("0"))
    digits, sign = digits.strip("0"), "-" if value < 0 else ""
    if 0 < point <= 21 or not digits:
        digits = digits.ljust(point, "0") or "0"
        return sign + digits[:point] + "." * (len(digits) > point > 0) + digits[point:]
    if -6 < point <= 0:
        return sign + "0." + "0" * -point + digits
    return sign + digits[0] + "." * (len(digits) > 1) + digits[1:] + "e%+d" % (point - 1)

def canonical(value):
    if isinstance(value, dict):
        keys = sorted(value, key=lambda key: key.encode("utf-16-be"))
        return "{" + ",".join(canonical(key) + ":" + canonical(value[key]) for key in keys) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    is_number = isinstance(value, (int, float)) and not isinstance(value, bool)
    return number(value) if is_number else json.dumps(value, ensure_ascii=False)

def signed(pem, text, signature):
    with tempfile.TemporaryDirectory() as folder:
        names = [os.path.join(folder, name) for name in ("key", "text", "signature")]
        for name, data in zip(names, (pem.encode(), text.encode(), signature)):
            open(name, "wb").write(data)
        return not openssl("pkeyutl", "-verify", "-rawin", "-pubin", "-inkey", names[0], "-in", names[1], "-sigfile", names[2]).returncode

def stamped(results, head, trusted):
    """Whether an outside authority's reply is over that head; None where no certificates say who the authority is."""
    reply, pem = bytes.fromhex(results["reply"]), trusted or results.get("certificates")
    time = datetime.datetime.strptime(results["time"], "%Y-%m-%dT%H:%M:%SZ").replace(tzinfo=datetime.timezone.utc)
    if head != results["head_sha256"] or bytes.fromhex(head) not in reply or time.strftime("%Y%m%d%H%M%S").encode() not in reply:
        return False
    if not pem:
        return None
    with tempfile.TemporaryDirectory() as folder:
        names = [os.path.join(folder, name) for name in ("reply", "certificates")]
        for name, data in zip(names, (reply, pem.encode())):
            open(name, "wb").write(data)
        return not openssl("ts", "-verify", "-digest", head, "-in", names[0], "-CAfile", names[1], "-attime", "%d" % time.timestamp()).returncode

def read_store(path):
    base = sqlite3.connect("file:%s?mode=ro" % path, uri=True)
    base.text_factory = lambda text: text.decode("utf-8", "surrogateescape")
    base.execute("PRAGMA trusted_schema = OFF")
    left = [2000 + os.path.getsize(path) // 1000]  # in units of 100,000 steps of the database's machine
    base.set_progress_handler(lambda: left.append(left.pop() - 1) or left[0] < 0, 100000)
    parts = base.execute("SELECT type || ' ' || name || ' ' || tbl_name || ' ' || coalesce(sql, '') FROM sqlite_schema ORDER BY type, name")
    if sha("".join(line + "\n" for line, in parts).encode("utf-8", "surrogateescape")).hex() != SCHEMA:  # before any row is read
        raise ValueError("the tables or triggers aren't those of a store")
    if [each for name in ("integrity_check", "application_id", "user_version") for each, in base.execute("PRAGMA " + name)] != ["ok", 1399673963, 2]:
        bad(0, "the file is damaged, or no store of this version")
    for seq, in base.execute("SELECT seq FROM rec WHERE typeof(kind) <> 'text' OR typeof(body) <> 'blob' OR typeof(leaf) <> 'blob'"):
        bad(seq, "values of another kind")
    state = base.execute("SELECT n, frontier FROM state WHERE id = 1").fetchone() or (-1, b"")
    heads = {row[0]: (row[1].hex(), *row[2:]) for row in base.execute("SELECT n, root, utc, previous, key_id, signature FROM head")}
    sides = [list(base.execute("SELECT * FROM " + table)) for table in ("lookup", "person", "raw_chunks")]
    return base.execute("SELECT seq, kind, body, leaf FROM rec ORDER BY seq"), heads, state, set(sides[0]), sides[1], sides[2]

def without_twins(pairs):
    if len(dict(pairs)) < len(pairs):
        raise ValueError("a member twice")
    return dict(pairs)

def read_bundle(path):
    records, heads, people, pieces, store = [], {}, [], [], None
    for line in open(path, "rb"):
        (name, item), = json.loads(line, object_pairs_hook=without_twins).items()
        if not line.endswith(b"\n") or (store is None) != (name == "bundle") or \
                name == "head" and (item["n"] != len(records) or item["n"] in heads or item["signature"] != item["signature"].lower()):
            raise ValueError("a line that isn't one of a bundle, or not in its place: %.60r" % line)
        if name == "bundle":
            store = item["store"]
            if item["format"] != "seamtakt-bundle" or item["version"] != 1:
                raise ValueError("a bundle of another version")
        elif name == "body":
            if item["store"] != store:
                raise ValueError("a record of another store")
            records.append((len(records) + 1, item["kind"], line[8:-2], sha(b"\0" + line[8:-2])))
        elif name == "head":
            heads[item["n"]] = (item["root"], item["utc"], item["previous"], item["key_id"], bytes.fromhex(item["signature"]))
        elif name == "person":
            people.append((item["sha256"], item["salt"], item["name"]))
        elif name == "raw" and item["digests"] == item["digests"].lower():
            pieces.append((item["sha256"], bytes.fromhex(item["digests"])))
        else:
            raise ValueError("a line of no kind that a bundle has")
    return records, heads, None, None, people, pieces

def grow(frontier, count, node):
    while count & 1:
        node, count = sha(b"\1" + frontier.pop() + node), count >> 1
    frontier.append(node)

def root_of(frontier):
    root = frontier[-1]
    for left in reversed(frontier[:-1]):
        root = sha(b"\1" + left + root)
    return root.hex()

def verify(path, anchors, pin, trusted=""):
    records, heads, state, lookups, people, pieces = (read_bundle if path.endswith(".jsonl") else read_store)(path)
    frontier, roots, expected, leaves, keys, logs, signer = [], {}, set(), [], [], {}, 0
    store, previous, last, last_time, named, kinds, owners, texts = "", "0" * 64, 0, None, set(), {}, {}, {}
    for seq, kind, body, leaf in records:
        if seq != len(leaves) + 1:
            return bad(len(leaves) + 1, "missing")
        leaves.append(sha(b"\0" + body))
        grow(frontier, seq - 1, leaves[-1])
        roots[seq], tree = root_of(frontier), json.loads(body)
        store, ref, results = tree["store"] if seq == 1 else store, tree.get("ref"), tree.get("results", {})
        if leaf != leaves[-1] or canonical(tree).encode() != body or (tree["seq"], tree["kind"], tree["store"]) != \
                (seq, kind, store) or tree["v"] not in (2, 3) or kind not in KINDS or (kind == "genesis") != (seq == 1) or ref is not None and not 0 < ref < seq:
            bad(seq, "its form, leaf, number, kind, store or reference is wrong")
        expected |= {(*each.split(":", 1), seq) for each in tree["keys"]} | ({("ref", str(ref), seq)} if ref is not None else set())
        named |= {each.decode() for each in re.findall(rb'"([0-9a-f]{64})"', body)}
        kinds[seq] = kind
        covered = results.get("records") if kind == "disposition" else None
        if covered is not None and (covered != sorted(set(covered)) or covered[:1] != [ref] or covered[-1] >= seq or
                                    [each for each in tree["keys"] if each.startswith("ref:")] != ["ref:%d" % each for each in covered[1:]]):
            bad(seq, "the records that it covers aren't those that it points at")
        if kind == "judgement" and (kinds.get(ref), kinds.get(results.get("calibration"))) != ("pass", "calibration"):
            bad(seq, "it doesn't judge a pass by a calibration")
        if kind == "timestamp":
            holds = stamped(results, texts.get(results["n"]), trusted)
            if holds is None:
                notes.append("record %d: who stamped the time %s isn't checked (--ca)" % (seq, results["time"]))
            elif not holds:
                bad(seq, "its time stamp doesn't hold")
            elif not trusted:
                notes.append("record %d: certificates in the store alone vouch for who stamped the time %s (--ca)" % (seq, results["time"]))
        for log in tree.get("raw", []):
            logs.setdefault(log["sha256"], log.get("chunk_root"))
        if kind in ("genesis", "key", "key_revoke", "signoff", "person"):
            text, proof = "seamtakt-key/1\n%s\n%s\n" % (store, results["key_id"]), "proof"
            if kind == "signoff":
                proof, text = "signature", "seamtakt-signoff/1\n%s\n%d\n%s\n%s\n" % (store, ref, leaves[ref - 1].hex(), results["key_id"])
            elif kind == "person":
                text = "seamtakt-person/1\n%s\n%s\n%s\n" % (store, results["key_id"], tree["who"])
            else:
                keys.append((results["key_id"], results["public_key"], kind != "key_revoke"))
            pem = results["public_key"]
            if key_id(pem) != results["key_id"] or not signed(pem, text, bytes.fromhex(results[proof])):
                bad(seq, "its key or signature doesn't hold")
            elif kind in ("signoff", "person") and (owners.setdefault(results["key_id"], tree["who"]) if kind == "person" else
                                                    owners.get(results["key_id"], tree["who"])) != tree["who"]:
                bad(seq, "its key belongs to another person")
        if seq in heads:
            root, utc, before, name, signature = heads[seq]
            text = "seamtakt-log/1\n%s\n%d\n%s\n%s\n%s\n%s\n" % (store, seq, root, utc, before, name)
            time = datetime.datetime.strptime(utc, "%Y-%m-%dT%H:%M:%SZ")
            key = next((i for i in range(len(keys) - 1, signer, -1) if not keys[i][2]), signer)
            if root != roots[seq] or before != previous or keys[key][0] != name or not signed(keys[key][1], text, signature) or \
                    last_time and (last_time - time).total_seconds() > 300:
                bad(last + 1, "the head of %d records doesn't hold" % seq)
            previous, last, last_time, signer = sha(text.encode()).hex(), seq, time, len(keys) - 1
            texts[seq] = previous
    if not leaves or not last == len(leaves) == max(heads) or state and state != (last, b"".join(frontier)):
        bad(last + 1, "heads, state and records don't end together")
    if lookups is not None and lookups != expected or any(salt != salt.lower() or len(salt) != 32 or sha(bytes.fromhex(salt) + name.encode("utf-8", "surrogateescape")).hex() != key for key, salt, name in people):
        bad(0, "what helps to find records, or a name, isn't as it was written")
    if state is None and {person[0] for person in people} - named:
        bad(0, "the bundle has a name that no record refers to")
    for log, digests in pieces:
        frontier = []
        for at in range(0, len(digests), 32):
            grow(frontier, at // 32, digests[at:at + 32])
        if logs.get(log, "") != root_of(frontier):
            bad(0, "the pieces of a raw log aren't those that were written")
    for name, n, root, *rest in anchors:
        head = heads.get(int(n), (0,) * 5)
        if name != store or roots.get(int(n)) != root or head[0] and rest != [head[1], head[3], head[4].hex()]:
            near = (sum(a != b for pair in zip((name, n, root, *rest), (store, str(at), each[0], each[1], each[3], each[4].hex())) for a, b in itertools.zip_longest(*pair)) for at, each in heads.items())
            if min(near, default=99) <= 16:  # a head of the store, with slips of whoever typed it
                mistyped.append("not an anchor: it is nearly that of a head of the store")
            else:
                bad(min(int(n), len(leaves) + 1), "an anchor of %s records doesn't agree" % n)
    reached = not pin
    for name, _, vouched in keys[:signer + 1] if pin else []:
        reached = name == pin or reached and vouched
    reached or bad(0, "not signed by the key given")
    return len(leaves)

def anchors_of(name):
    """Of a file as people keep them: on one line or several, digits in groups, in capitals, after the word "Anchor"."""
    text, found = open(name, encoding="utf-8").read().replace("\ufb00", "ff").replace("\ufeff", ""), []
    words = [word for line in text.lower().splitlines() if line.strip()[:1] != "#" for word in line.split()]
    while words:
        anchor = []
        if words[0] in ("anchor", "anchor:"):
            words.pop(0)
        for width in (32, 0, 64, 20, 64, 128):
            part = words.pop(0) if words else ""
            while words and len(part) < width:
                part += words.pop(0)
            if width != 20 and set(part) - set("0123456789abcdef"[:16 if width else 10]) or width and len(part) != width or not width and not (part and int(part)):
                raise ValueError("%r" % part)
            width == 20 and datetime.datetime.strptime(part.upper(), "%Y-%m-%dT%H:%M:%SZ")
            anchor.append(part.upper() if width == 20 else part)
        found.append(anchor)
    return found

if __name__ == "__main__":
    given = argparse.ArgumentParser(description=__doc__); given.add_argument("file")
    given.add_argument("--anchor", action="append", default=[], help="file of anchors kept outside")
    given.add_argument("--pub", help="public key (PEM) that the auditor holds")
    given.add_argument("--ca", help="certificates (PEM) of the time stamping authorities that the auditor trusts")
    given, count, lines = given.parse_args(), 0, []
    for name in given.anchor:
        try:
            lines += anchors_of(name)
        except (ValueError, IndexError, OSError) as error:
            print("%s: not an anchor: %s" % (name, error), file=sys.stderr)
            sys.exit(2)
    try:
        open(given.file, "rb").read(1)
    except OSError as error:  # a disk or a right that fails says nothing of the records
        print("can't be read: %s" % error, file=sys.stderr)
        sys.exit(3)
    try:
        count = verify(given.file, lines, given.pub and key_id(open(given.pub).read()), given.ca and open(given.ca).read())
    except Exception as error:  # what can't be read can't be trusted
        bad(0, "can't be read: %r" % error)
    if mistyped and not problems:  # which says nothing of the store
        print(mistyped[0], file=sys.stderr)
        sys.exit(2)
    first = next((seq for seq, _ in problems if seq), 0)  # a record is looked at before the head over it
    print("NOT TRUSTED" + (": first bad record %d" % first if first else "") if problems else
          "OK%s: %d records" % ("" if given.anchor or given.pub else " but unanchored", count))
    print("".join("note: %s\n" % note for note in notes), end="")
    sys.exit("\n".join("%s: %s" % each for each in problems[:20]) or 0)
