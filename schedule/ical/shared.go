package ical

import (
	"bytes"
	"io"
	"time"

	ics "github.com/arran4/golang-ical"

	"swardbook/schedule"
)

// Shared is what calendars of one program have in common, for whoever writes
// several: each job is described and written once. It serves one program and one
// goroutine. The zero value has nothing yet.
type Shared struct {
	record, page string             // that the descriptions mention
	contents     map[string]Content // by UID
	written      map[string]written // by UID
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

// written is an event as the library writes it.
type written struct {
	*ics.VEvent
	of    Event
	lines []byte
}

// event makes an event one of the library's components.
func (s *Shared) event(e *Event) (ics.Component, error) {
	if s == nil {
		return e.component(), nil
	}
	if w, ok := s.written[e.UID]; ok && w.of.Sequence == e.Sequence && w.of.Stamp.Equal(e.Stamp) && w.of.equal(e.Content) {
		return w, nil
	}
	w := written{VEvent: e.component(), of: *e}
	var lines bytes.Buffer
	if err := w.VEvent.SerializeTo(&lines, unfolded); err != nil {
		return nil, err
	}
	if w.lines = foldAll(lines.Bytes()); s.written == nil {
		s.written = map[string]written{}
	}
	s.written[e.UID] = w
	return w, nil
}

// SerializeTo writes the lines again.
func (w written) SerializeTo(to io.Writer, _ *ics.SerializationConfiguration) error {
	_, err := to.Write(w.lines)
	return err
}
