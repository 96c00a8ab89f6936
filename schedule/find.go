package schedule

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
)

// Find looks a job up by its id ("east/lime/1"), or by a part that fits only
// one job: "lime/1", "east/lime", "lime". It gives the entry, or what was left
// out. The error names jobs that come near.
func (p *Program) Find(job string) (*Entry, *LeftOut, error) {
	job = strings.Trim(strings.TrimSpace(job), "/")
	var ids []string
	for i := range p.Entries {
		if p.Entries[i].ID == job {
			return &p.Entries[i], nil, nil
		}
		ids = append(ids, p.Entries[i].ID)
	}
	for i := range p.LeftOut {
		if p.LeftOut[i].ID == job {
			return nil, &p.LeftOut[i], nil
		}
		ids = append(ids, p.LeftOut[i].ID)
	}
	var near []string
	for _, id := range ids {
		if job != "" && fits(id, job) && !slices.Contains(near, id) {
			near = append(near, id)
		}
	}
	switch len(near) {
	case 1:
		return p.Find(near[0])
	case 0:
		hint := agronomy.NearestName(job, Unique(ids))
		if hint == "" {
			hint = strings.Join(Unique(ids), ", ")
		}
		return nil, nil, fmt.Errorf("no job %q; there is %s", job, hint)
	}
	return nil, nil, fmt.Errorf("%q fits several jobs: %s", job, strings.Join(near, ", "))
}

// fits tells whether the parts of a name stand in an id, in order.
func fits(id, name string) bool {
	want := strings.Split(name, "/")
	for part := range strings.SplitSeq(id, "/") {
		if len(want) > 0 && part == want[0] {
			want = want[1:]
		}
	}
	return len(want) == 0
}

// Standing says in a word how a job stands on a day: "done", "missed",
// "planned", "due" inside its window from its day on, "overdue" when the
// window has closed on a job that is not on record. An overdue job is taken as
// done as planned until the record book says otherwise.
func (p *Program) Standing(e *Entry, today Date) string {
	switch {
	case e.State != Planned:
		return string(e.State)
	case e.Kind.Notice() && today.After(e.Date):
		return "past"
	case today.After(e.Latest):
		return overdue
	case !today.Before(e.Date):
		return "due"
	}
	return string(Planned)
}

const overdue = "overdue"

// Filter gives the program cut to one area, one person and some kinds; empty
// values do not cut. Notices for the whole site stay, whatever the area or the
// person.
func (p *Program) Filter(area, person string, ks []Kind) *Program {
	q := *p
	q.Entries = []Entry{}
	for _, e := range p.Entries {
		whole := e.Kind.Notice()
		if (area == "" || e.Area == area || whole) && (person == "" || e.Who == person || whole) &&
			(len(ks) == 0 || slices.Contains(ks, e.Kind)) {
			q.Entries = append(q.Entries, e)
		}
	}
	q.LeftOut = []LeftOut{}
	for _, l := range p.LeftOut {
		if (area == "" || l.Area == area) && (len(ks) == 0 || slices.Contains(ks, l.Kind)) {
			q.LeftOut = append(q.LeftOut, l)
		}
	}
	if area != "" {
		q.Areas = slices.DeleteFunc(slices.Clone(p.Areas), func(a AreaShown) bool { return a.ID != area })
	}
	return &q
}
