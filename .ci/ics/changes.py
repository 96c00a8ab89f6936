"""Tells what became of a calendar between two versions, and what a phone that
holds the old one would get wrong.

    changes.py OLD.ics NEW.ics [moved|reworded|cancelled|restored|added|none]

With a word, that must have happened to an event; with several, as in
"moved|reworded", one of them; none: nothing to any event."""

import sys
from datetime import date, timedelta
from pathlib import Path

from icalendar import Calendar

STAMPS = {"SEQUENCE", "DTSTAMP", "LAST-MODIFIED"}


class Event:
    def __init__(self, component):
        self.uid = str(component["uid"])
        self.day = component["dtstart"].dt
        self.title = str(component["summary"])
        self.cancelled = component.get("status") == "CANCELLED"
        self.sequence = int(component["sequence"])
        self.changed = component["last-modified"].dt
        self.content = [(n, v.to_ical() if hasattr(v, "to_ical") else v) for n, v in component.property_items(sorted=False)
                        if n not in STAMPS]

    def stamps(self):
        return self.sequence, self.changed


def events(file):
    return {e.uid: e for e in map(Event, Calendar.from_ical(Path(file).read_bytes()).walk("VEVENT"))}


def happened(was, now):
    """What became of an event whose content changed."""
    if now.cancelled != was.cancelled:
        return "cancelled" if now.cancelled else "restored"
    return "moved" if now.day != was.day else "reworded"


def mistakes(old, new, today):
    """What a subscriber would miss, double or be bothered with for nothing."""
    for uid, was in old.items():
        now = new.get(uid)
        if now is None:
            if was.day + timedelta(days=30) >= today:
                yield f"{uid} is gone, so nobody learns that it is cancelled"
            yield from (f"{uid} became {n.uid}: it shows twice" for n in new.values()
                        if n.uid not in old and (n.day, n.title) == (was.day, was.title))
        elif now.content == was.content:
            if now.stamps() != was.stamps():
                yield f"{uid} has new stamps and nothing else new"
        elif now.sequence <= was.sequence or now.changed <= was.changed:
            yield f"{uid} changed, but SEQUENCE went {was.sequence} to {now.sequence}, LAST-MODIFIED {was.changed} to {now.changed}"


def main(old_file, new_file, want=None):
    old, new = events(old_file), events(new_file)
    count = dict.fromkeys(["moved", "reworded", "cancelled", "restored", "added", "gone"], 0)
    for uid in old.keys() & new.keys():
        if old[uid].content != new[uid].content:
            count[happened(old[uid], new[uid])] += 1
    count["added"], count["gone"] = len(new.keys() - old.keys()), len(old.keys() - new.keys())
    found = list(mistakes(old, new, date.today()))
    if want == "none" and Path(old_file).read_bytes() != Path(new_file).read_bytes():
        found.append("nothing was changed, and yet the bytes differ")
    elif want and want != "none" and not any(count[what] for what in want.split("|")):
        found.append(f"no event was {want}")
    print("  " + ", ".join(f"{n} {what}" for what, n in count.items() if n) if any(count.values()) else "  unchanged")
    for fault in found:
        print(f"  ! {fault}")
    return len(found)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]) > 0)
