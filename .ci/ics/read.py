"""Reads a calendar with a reader that others wrote, and prints what it saw as
JSON: read.py icalendar|libical|vobject FILE."""

import json
import sys
from datetime import datetime, timedelta

TEXTS = ["uid", "summary", "description", "location", "status", "transp", "url", "sequence"]
TIMES = ["dtstart", "dtend", "dtstamp", "last-modified"]


def when(value):
    """20260923, or 20260912T000000Z for a moment."""
    if isinstance(value, datetime):
        return value.strftime("%Y%m%dT%H%M%S") + ("Z" if value.utcoffset() == timedelta(0) else "")
    return value.strftime("%Y%m%d")


def icalendar(data):
    from icalendar import Calendar

    def seen(event):
        told = {n: str(event[n]) for n in TEXTS if n in event}
        told |= {n: when(event[n].dt) for n in TIMES if n in event}
        told["categories"] = [str(c) for c in event["categories"].cats] if "categories" in event else []
        told["alarms"] = [[int(a["trigger"].dt.total_seconds()), str(a["description"])] for a in event.walk("VALARM")]
        return told

    calendar = Calendar.from_ical(data)
    events = calendar.walk("VEVENT")
    faults = [": ".join(map(str, e)) for event in events for e in event.errors]
    return str(calendar["x-wr-calname"]), [seen(e) for e in events], faults


def vobject(data):
    import vobject

    def seen(event):
        value = {n: event.contents[n][0].value for n in TEXTS + TIMES + ["categories"] if n in event.contents}
        told = {n: value[n] for n in TEXTS if n in value}
        told |= {n: when(value[n]) for n in TIMES if n in value}
        told["categories"] = value.get("categories", [])
        told["alarms"] = [[int(a.trigger.value.total_seconds()), a.description.value]
                          for a in event.contents.get("valarm", [])]
        return told

    calendar, = vobject.readComponents(data.decode())
    for event in calendar.vevent_list:
        event.validate(raiseException=True)
    return calendar.x_wr_calname.value, [seen(e) for e in calendar.vevent_list], []


def libical(data):
    import gi
    gi.require_version("ICalGLib", "3.0")
    from gi.repository import ICalGLib as ical

    def each(component, kind, first, following):
        item = getattr(component, first)(kind)
        while item:
            yield item
            item = getattr(component, following)(kind)

    def parts(component, kind):
        return each(component, kind, "get_first_component", "get_next_component")

    def properties(component, kind=ical.PropertyKind.ANY_PROPERTY):
        return each(component, kind, "get_first_property", "get_next_property")

    def text(prop):
        value = prop.get_value()
        return value.get_text() if value.isa() == ical.ValueKind.TEXT_VALUE else prop.get_value_as_string()

    def seen(event):
        told = {"categories": [], "alarms": []}
        for p in properties(event):
            name = p.get_property_name().lower()
            if name == "categories":
                told[name].append(text(p))
            elif name in TEXTS + TIMES:
                told[name] = text(p)
        for alarm in parts(event, ical.ComponentKind.VALARM_COMPONENT):
            trigger = alarm.get_first_property(ical.PropertyKind.TRIGGER_PROPERTY).get_trigger()
            told["alarms"].append([trigger.get_duration().as_int(),
                                   text(alarm.get_first_property(ical.PropertyKind.DESCRIPTION_PROPERTY))])
        return told

    def faults(component):
        for p in properties(component, ical.PropertyKind.XLICERROR_PROPERTY):
            yield p.get_xlicerror()
        for part in parts(component, ical.ComponentKind.ANY_COMPONENT):
            yield from faults(part)

    calendar = ical.Component.new_from_string(data.decode())
    ical.restriction_check(calendar)
    name, = [text(p) for p in properties(calendar) if p.get_property_name() == "X-WR-CALNAME"]
    return name, [seen(e) for e in parts(calendar, ical.ComponentKind.VEVENT_COMPONENT)], list(faults(calendar))


if __name__ == "__main__":
    with open(sys.argv[2], "rb") as file:
        name, events, faults = {"icalendar": icalendar, "libical": libical, "vobject": vobject}[sys.argv[1]](file.read())
    json.dump({"name": name, "events": events, "faults": faults}, sys.stdout)
