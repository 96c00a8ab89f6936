package plan

import (
	"fmt"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// longBook is a book of lines of a nitrogen feed, so many a day, on days in a row, area
// by area.
func longBook(site *schedule.Site, lines, aDay, apart int) (book []schedule.Done) {
	feed := material.Material{ID: "feed", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24, P2O5: 2, K2O: 8}, SlowShare: 0.3, Pack: 40}
	for day := 0; len(book) < lines; day += apart {
		for i := range site.Areas {
			for range aDay {
				if len(book) == lines {
					return book
				}
				book = append(book, schedule.Done{Line: len(book) + 2, Date: site.Start.AddDays(day), Area: site.Areas[i].ID, Job: "nitrogen", Content: &feed, Material: feed.ID, Weight: agronomy.Pounds(0.01)})
			}
		}
	}
	return book
}

// BenchmarkBook plans sites with record books of 20,000 lines.
func BenchmarkBook(b *testing.B) {
	for _, c := range []struct{ areas, aDay, apart int }{{1, 20_000, 1}, {1, 100, 1}, {1, 8, 1}, {1, 20, 7}, {10, 8, 7}, {40, 8, 7}} {
		b.Run(fmt.Sprintf("%d areas, %d lines a day, %d days apart", c.areas, c.aDay, c.apart), func(b *testing.B) {
			site := threeAreas(b, c.areas)
			site.Through = schedule.Date{}
			site.Crew.JobsPerDay = 0
			book := longBook(site, 20_000, c.aDay, c.apart)
			last, err := Through(site, book[len(book)-1].Date)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				if _, err := Program(site, book, last); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
