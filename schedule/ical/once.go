package ical

import (
	"bytes"
	"fmt"
	"time"

	"swardbook/schedule"
)

// Shared keeps what several calendars of one program have in common, so that each job is
// described and written only once. It is for one program and one goroutine. The zero value
// is ready for use.
type Shared struct {
	record, page string             // the addresses that the descriptions mention
	contents     map[string]Content // of each event, by its UID
	written      map[string]written // of each event, by its UID
	draft        bytes.Buffer       // an event before its lines are folded
}

// written is an event with its lines in the file.
type written struct {
	event Event
	lines []byte
}

// content gives what the calendar shows of a job.
func (s *Shared) content(t *teller, e *schedule.Entry, remind []time.Duration) Content {
	if s == nil {
		return t.content(e, remind)
	}
	if s.contents == nil || s.record != t.record || s.page != t.page {
		s.record, s.page, s.contents = t.record, t.page, map[string]Content{}
	}
	c, ok := s.contents[e.UID]
	if !ok {
		c = t.content(e, remind)
		s.contents[e.UID] = c
	}
	return c
}

// lines gives the lines of an event.
func (s *Shared) lines(e *Event) ([]byte, error) {
	if s != nil {
		if w, ok := s.written[e.UID]; ok && w.event.Sequence == e.Sequence && w.event.Stamp.Equal(e.Stamp) && w.event.equal(e.Content) {
			return w.lines, nil
		}
	}
	text := &bytes.Buffer{}
	if s != nil {
		text = &s.draft
		text.Reset()
	}
	text.Grow(usualEvent)
	if err := e.component().SerializeTo(text, unfolded); err != nil {
		return nil, fmt.Errorf("writing the event %s: %w", e.UID, err)
	}
	lines := foldAll(text.Bytes())
	if s != nil {
		if s.written == nil {
			s.written = map[string]written{}
		}
		s.written[e.UID] = written{*e, lines}
	}
	return lines, nil
}
