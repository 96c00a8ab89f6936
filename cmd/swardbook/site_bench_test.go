package main

import (
	"io"
	"os"
	"path/filepath"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/ical"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// BenchmarkSite plans a site and writes its calendar: the example with two areas,
// and the same with a third one beside them, whose jobs want the same days.
func BenchmarkSite(b *testing.B) {
	dir := filepath.Join("..", "..", "examples", "reading-garden")
	text, err := os.ReadFile(filepath.Join(dir, "site.toml"))
	if err != nil {
		b.Fatal(err)
	}
	site, problems := sitefile.Load("site.toml", text, func(name string) (io.ReadCloser, error) { return os.Open(filepath.Join(dir, name)) })
	if site == nil {
		b.Fatal(problems)
	}
	three := *site
	third := site.Areas[1]
	third.ID, third.Name = "north", "north lawn"
	three.Areas = append(three.Areas[:2:2], third)
	free := three
	free.Crew.JobsPerDay = 0
	for _, c := range []struct {
		name string
		site *schedule.Site
	}{{"two areas", site}, {"three areas", &three}, {"three areas, any number of jobs a day", &free}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				p, err := plan.Program(c.site, nil, schedule.Date{})
				if err != nil {
					b.Fatal(err)
				}
				if _, err := ical.Write(p, ical.Options{}, p.Start.Time()); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
