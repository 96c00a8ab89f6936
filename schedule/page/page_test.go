package page_test

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/page"
	scplan "swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// names are the sites that pages are written of: the example of a young lawn of
// two areas in US units; of testdata, a metric warm-season infield with a record
// book and a lawn without a report. The whole bytes of a sheet and a lesson are
// held by the examples (cmd/swardbook).
var names = []string{"garden", "infield", "unread"}

func load(t testing.TB, file string) *schedule.Site {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := sitefile.Load(file, text, func(name string) (io.ReadCloser, error) {
		return os.Open(filepath.Join(filepath.Dir(file), name))
	})
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	return s
}

var plans = map[string]*schedule.Program{}

func planned(t testing.TB, name string) *schedule.Program {
	t.Helper()
	if name == "garden" {
		return plan(t, "../../examples/reading-garden/site.toml")
	}
	return plan(t, filepath.Join("testdata", name+".toml"))
}

// plan plans a site file with its record book, if it has one. Tests share the
// program: pages only read it.
func plan(t testing.TB, file string) *schedule.Program {
	t.Helper()
	if p, ok := plans[file]; ok {
		return p
	}
	s := load(t, file)
	var book []schedule.Done
	record := strings.TrimSuffix(file, ".toml") + ".record.csv"
	if text, err := os.ReadFile(record); err == nil {
		var problems []schedule.Problem
		if book, problems = sitefile.LoadRecord(record, text, s); schedule.Fatal(problems) {
			t.Fatal(problems)
		}
	}
	p, err := scplan.Program(s, book, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	plans[file] = p
	return p
}

// A page leads to other pages, and runs nothing.
func TestAddressesOnThePage(t *testing.T) {
	p := planned(t, "garden")
	for address, fine := range map[string]bool{"": true, "https://example.org/a?b=c": true, "done": true, "file:///tmp/lawn.html#/x": true, "content://downloads/12": true,
		"javascript:alert(1)": false, "JavaScript:alert(1)": false, "data:text/html,x": false, "%zz": false, "\x01javascript:x": false} {
		for what, o := range map[string]page.Options{"link": {Link: address}, "record": {Record: address}} {
			if _, err := page.Sheet(p, o); (err == nil) != fine {
				t.Errorf("%s %q: %v", what, address, err)
			}
		}
		if _, err := page.Answer(p, page.Answered{Change: address}); (err == nil) != fine {
			t.Errorf("change %q: %v", address, err)
		}
	}
}
