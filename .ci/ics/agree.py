"""Reads a calendar with four readers of other people and tells where they
disagree with each other, with the program, or with the form that phones need.

    agree.py FILE.ics [PROGRAM.json]"""

import json
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent
READERS = {"icalendar": ["/usr/bin/python3", HERE / "read.py", "icalendar"],
           "libical": ["/usr/bin/python3", HERE / "read.py", "libical"],
           "vobject": ["/usr/bin/python3", HERE / "read.py", "vobject"],
           "ical.js": ["node", HERE / "read.mjs"]}


def lines(data):
    """The octets: what RFC 5545, section 3.1, asks of every line."""
    if not data.endswith(b"END:VCALENDAR\r\n"):
        yield "the file does not end with END:VCALENDAR"
    for number, line in enumerate(data.split(b"\r\n")[:-1], 1):
        if len(line) > 75:
            yield f"line {number} has {len(line)} octets"
        if b"\n" in line or b"\r" in line or (line and min(line) < 32):
            yield f"line {number} holds a control character"
        try:
            line.decode()
        except UnicodeDecodeError:
            yield f"line {number} breaks inside a letter"


def phones(events):
    """What makes phones lose, double or misplace events."""
    uids = [e.get("uid", "") for e in events]
    if not events:
        yield "no events"
    for uid in sorted({u for u in uids if uids.count(u) > 1}):
        yield f"{uid} is there twice"
    for e in events:
        for name in ("uid", "summary", "description", "status", "sequence", "dtstart", "dtend", "dtstamp"):
            if not e.get(name):
                yield f"{e.get('uid')} has no {name}"
        if not len(e["dtstart"]) == len(e["dtend"]) == 8 or e["dtend"] <= e["dtstart"]:
            yield f"{e['uid']} lasts from {e['dtstart']} to {e['dtend']}, which is no whole day"
        if e.get("transp") != "TRANSPARENT":
            yield f"{e['uid']} makes the day busy"
        if e.get("last-modified") != e["dtstamp"]:
            yield f"{e['uid']} has two times of change"
        if len(e["alarms"]) > (0 if e["status"] == "CANCELLED" else 2):
            yield f"{e['uid']} has {len(e['alarms'])} alarms"
        if "<" in e["description"] or ">" in e["description"]:
            yield f"{e['uid']} holds what some clients take for a tag"


def kept(events, program):
    """Every job of the program is an event on its day, and the other way round."""
    want = {e["uid"]: e["date"].replace("-", "") for e in program["entries"]}
    have = {e["uid"]: e["dtstart"] for e in events if e["status"] != "CANCELLED" and e["dtstart"] >= program["start"].replace("-", "")}
    for uid in sorted(want.keys() | have.keys()):
        if want.get(uid) != have.get(uid):
            yield f"{uid}: the program says {want.get(uid)}, the calendar {have.get(uid)}"


def differences(sight):
    """Where readers see different things."""
    first, *others = sight
    for other in others:
        a, b = sight[first], sight[other]
        if a["name"] != b["name"] or len(a["events"]) != len(b["events"]):
            yield f"{first} sees {a['name']!r}, {len(a['events'])} events; {other} sees {b['name']!r}, {len(b['events'])}"
        for x, y in zip(a["events"], b["events"]):
            for name in sorted(x.keys() | y.keys()):
                if x.get(name) != y.get(name):
                    yield f"{x['uid']} {name}: {first} sees {x.get(name)!r}, {other} sees {y.get(name)!r}"


def main(file, program=None):
    sight, found = {}, list(lines(Path(file).read_bytes()))
    for reader, command in READERS.items():
        run = subprocess.run([*command, file], capture_output=True, text=True, stdin=subprocess.DEVNULL)
        if run.returncode:
            found.append(f"{reader} cannot read it: {run.stderr.strip()[-300:]}")
            continue
        sight[reader] = json.loads(run.stdout)
        found += [f"{reader}: {fault}" for fault in sight[reader]["faults"]]
    if sight:
        found += differences(sight)
        events = next(iter(sight.values()))["events"]
        found += phones(events)
        if program:
            found += kept(events, json.loads(Path(program).read_text()))
    for fault in found:
        print(f"  ! {fault}")
    return len(found)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]) > 0)
