"""Reads a calendar with python3-icalendar and prints each event as it was understood; also expands
the rules with dateutil and demands that the first event is one of its own rule's days."""

import sys

from dateutil.rrule import rrulestr
from icalendar import Calendar

import datetime

with open(sys.argv[1], "rb") as file:
    data = file.read()
calendar = Calendar.from_ical(data)
assert str(calendar["VERSION"]) == "2.0" and calendar["PRODID"]
assert not calendar.errors
for event in calendar.walk("VEVENT"):
    assert not event.errors, event.errors
    assert event["DTSTAMP"].dt == datetime.datetime(2026, 3, 2, 7, 1, 5, tzinfo=event["DTSTAMP"].dt.tzinfo)
    start = event["DTSTART"].dt
    assert not isinstance(start, datetime.datetime), "an all-day event"
    rule = ""
    if "RRULE" in event:
        r = event["RRULE"]
        rule = f"{r['FREQ'][0]}/{r.get('INTERVAL', [1])[0]}"
        first = datetime.datetime(start.year, start.month, start.day)
        days = rrulestr(r.to_ical().decode(), dtstart=first)
        assert days[0] == first
        span = (days[12] - days[0]).days
        each = {"DAILY": 1, "WEEKLY": 7, "MONTHLY": 30.4375}[r["FREQ"][0]] * r.get("INTERVAL", [1])[0]
        assert abs(span - 12 * each) < 3, "a recurrence is left out"
    print(f"{event['UID']}|{start.year}-{start.month}-{start.day}|{rule}|{event['SUMMARY']}|{event.get('DESCRIPTION', '')}")
