package feed

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/page"
)

// asking is what the page of the questions shows.
type asking struct {
	Answers  ask.Answers
	Problems []schedule.Problem
	Names    bool     // the names of people may go into the address
	More     string   // of what one more is asked for: "material" or "record"
	Wrong    []string // what keeps the answers from becoming an address
}

// askView is the same for the template.
type askView struct {
	head
	Groups []group
	Wrong  []string
	Names  bool
	Others []schedule.Problem // of no field that is asked for
}

type group struct {
	Title  string
	Fields []question
}

type question struct {
	Key, Label, Hint, Value string
	Choice                  []string
	Problems                []schedule.Problem
}

func (q question) ID() string { return strings.NewReplacer(".", "-", `"`, "", " ", "-").Replace(q.Key) }

func (f *Feed) showAsk(a answered, w http.ResponseWriter, q *http.Request, status int, v asking) answered {
	body, err := render("ask.html", v.view())
	if err != nil {
		return f.broken(a, w, err)
	}
	return sendPage(a, w, q, status, body)
}

func words[W ~string](all []W) (out []string) {
	for _, w := range all {
		out = append(out, string(w))
	}
	return out
}

func (v asking) view() askView {
	out := askView{head: newHead("When to lime and feed a lawn"), Wrong: v.Wrong, Names: v.Names}
	add := func(title string, asked ...question) { out.Groups = append(out.Groups, group{title, asked}) }
	add("Where is it?", question{Key: "title", Label: "What it is called"}, question{Key: "place.zip", Label: "ZIP"})
	areas := v.Answers.Names("area")
	if len(areas) == 0 {
		areas = []string{"lawn"}
	}
	for _, id := range areas {
		k := "area." + id + "."
		s := k + "soil."
		add("The grass", question{Key: k + "size", Label: "How big", Hint: "2600 sq ft, 320 m2, 0.1 acre"},
			question{Key: k + "grass", Label: "Which grass", Choice: agronomy.GrassNames()},
			question{Key: k + "seeded", Label: "Sown on", Hint: "2026-09-03; empty if it is older than a year"},
			question{Key: k + "texture", Label: "Soil", Choice: words(agronomy.Textures())},
			question{Key: k + "care", Label: "Care", Choice: words([]nutrient.Care{nutrient.LowCare, nutrient.MediumCare, nutrient.HighCare})},
			question{Key: k + "clippings", Label: "Clippings", Choice: []string{"returned", "removed"}})
		add("The laboratory’s sheet", question{Key: s + "sampled", Label: "Sampled on", Hint: "2026-09-03; empty without a report"},
			question{Key: s + "method", Label: "How P and K were drawn out", Choice: words(agronomy.Extractants())},
			question{Key: s + "ph", Label: "pH"},
			question{Key: s + "buffer.method", Label: "Buffer", Choice: words(agronomy.BufferMethods())},
			question{Key: s + "buffer.ph", Label: "Buffer pH"},
			question{Key: s + "phosphorus", Label: "Phosphorus", Hint: "14 ppm, 28 lb/acre"},
			question{Key: s + "potassium", Label: "Potassium"},
			question{Key: s + "magnesium", Label: "Magnesium"})
	}
	for _, id := range more(v.Answers.Names("material"), "bag", v.More == "material") {
		k := "material." + id + "."
		add("In the shed", question{Key: k + "name", Label: "What it is"},
			question{Key: k + "analysis", Label: "The three numbers on a fertilizer", Hint: "18-24-12"},
			question{Key: k + "kind", Label: "Kind", Choice: []string{"lime", "fertilizer", "sulfur", "gypsum", "magnesium"}},
			question{Key: k + "cce", Label: "Calcium carbonate equivalent of a lime, %"},
			question{Key: k + "pack", Label: "A full pack", Hint: "40 lb"},
			question{Key: k + "on_hand", Label: "Packs left"})
	}
	for _, n := range more(v.Answers.Names("record"), "", v.More == "record") {
		k := "record." + n + "."
		add("What went down already", question{Key: k + "date", Label: "On"},
			question{Key: k + "kind", Label: "As", Choice: []string{"starter", "lime", "nitrogen", "phosphorus", "potassium"}},
			question{Key: k + "material", Label: "Which bag", Choice: v.Answers.Names("material")},
			question{Key: k + "amount", Label: "How much in all", Hint: "9 lb"})
	}
	add("Days", question{Key: "crew.days", Label: "Days you can work", Hint: "sat, sun; empty for any day"})
	v.fill(&out)
	return out
}

// more gives the names there are, and one to come.
func more(names []string, prefix string, another bool) []string {
	if len(names) > 0 && !another {
		return names
	}
	for n := 1; ; n++ {
		if next := prefix + strconv.Itoa(n); !slices.Contains(names, next) {
			return append(names, next)
		}
	}
}

// fill puts each answer and each problem where it is asked for, and what is asked for
// nowhere at the end.
func (v asking) fill(out *askView) {
	asked := map[string]bool{}
	for i := range out.Groups {
		for j := range out.Groups[i].Fields {
			q := &out.Groups[i].Fields[j]
			q.Value = v.Answers.Get(q.Key)
			asked[q.Key] = true
			for _, p := range v.Problems {
				if p.Key == q.Key {
					q.Problems = append(q.Problems, p)
				}
			}
			if q.Choice != nil && q.Value != "" && !slices.Contains(q.Choice, q.Value) {
				q.Choice = append([]string{q.Value}, q.Choice...)
			}
		}
	}
	var rest group
	for _, one := range v.Answers {
		if !asked[one.Key] && one.Key != "id" {
			asked[one.Key] = true
			q := question{Key: one.Key, Label: one.Key, Value: one.Value}
			for _, p := range v.Problems {
				if p.Key == q.Key {
					q.Problems = append(q.Problems, p)
				}
			}
			rest.Fields = append(rest.Fields, q)
		}
	}
	if rest.Title = "Other answers"; rest.Fields != nil {
		out.Groups = append(out.Groups, rest)
	}
	for _, p := range v.Problems {
		if !asked[p.Key] && !p.Warning {
			out.Others = append(out.Others, p)
		}
	}
}

// answerView is the page behind a link.
type answerView struct {
	*landing
	Sheet, Ask, Toml, Book string
}

// answer writes the page behind a link.
func (t *tree) answer(p *schedule.Program) ([]byte, error) {
	l := t.landing(p, map[string]string{})
	if l.Home != "" {
		c, err := page.NewCode(l.Home)
		if err != nil {
			return nil, err
		}
		l.Code, l.Dense = c, true
	}
	if len(l.Areas) == 1 {
		l.Areas = nil
	}
	v := answerView{landing: l, Sheet: within(t.code, sheetFile), Ask: within(t.code, askPath), Toml: within(t.code, tomlFile)}
	if slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.State != schedule.Planned }) {
		v.Book = within(t.code, bookFile)
	}
	body, err := render("link.html", v)
	if err != nil {
		return nil, fmt.Errorf("the page: %w", err)
	}
	return body, nil
}
