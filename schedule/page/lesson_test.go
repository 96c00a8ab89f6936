package page_test

import (
	"testing"

	"swardbook/schedule/page"
)

func TestLessonGolden(t *testing.T) {
	p := stored(t, "garden")
	for _, key := range []bool{false, true} {
		name := map[bool]string{false: "worksheet", true: "key"}[key]
		html, err := page.Lesson(p, key, page.Options{Area: "east"})
		if err != nil {
			t.Fatal(err)
		}
		golden(t, "garden."+name+".html", html)
		md, err := page.LessonMarkdown(p, key, page.Options{Area: "east"})
		if err != nil {
			t.Fatal(err)
		}
		golden(t, "garden."+name+".md", md)
	}
}
