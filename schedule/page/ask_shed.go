package page

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"swardbook/schedule/word"
)

func unquoted(key string) string { return strings.ReplaceAll(key, `"`, "") }

// free gives the first of the names bag1, bag2 … that no row has yet.
func free(names []string, stem string) string {
	for n := 1; ; n++ {
		if name := stem + strconv.Itoa(n); !slices.Contains(names, name) {
			return name
		}
	}
}

// bags are the bags on the page: those filled in or asked for, and an empty one if
// there are none.
func (q *questions) bags() []string {
	bags := q.names("material")
	for _, b := range q.names("form.material") {
		if !slices.Contains(bags, b) {
			bags = append(bags, b)
		}
	}
	if len(bags) == 0 {
		bags = []string{free(nil, "bag")}
	}
	return bags
}

func (q *questions) shed() askScreen {
	s := askScreen{Title: "In the shed", Lead: "Every bag that may go on the grass, also one that is empty if it went down already. What is missing, the program says what to buy.", More: "bag", MoreName: "Another bag"}
	for i, id := range q.bags() {
		at := "material." + id
		kind := choose(q.field("", at+".kind", "What is it?", ""), "select", "", "Choose", "fertilizer", "Fertilizer", "lime", "Lime", "sulfur", "Sulfur", "gypsum", "Gypsum", "magnesium", "Magnesium", "wood ash", "Wood ash", "iron", "Iron")
		var npk []askField
		for _, one := range [][2]string{{"n", "N"}, {"p", "P₂O₅"}, {"k", "K₂O"}} {
			npk = append(npk, q.number("form."+at+"."+one[0], one[1], ""))
		}
		npk[0].Errs = append(npk[0].Errs, q.problems(at+".analysis", "The three numbers", npk[0].ID)...)
		s.Groups = append(s.Groups, askGroup{Class: "bag", Legend: "Bag " + strconv.Itoa(i+1), ID: fieldID(at), Fields: []askField{kind}, Groups: []askGroup{
			{Class: "npk", Legend: "Three numbers on the bag", Fields: npk},
			{Class: "lime", Fields: []askField{
				q.number(at+".cce", "Lime value, % (CCE)", "On the label: calcium carbonate equivalent. Most limestone has 85 to 95."), // [common]
				q.number(at+".ecce", "Or effective, % (ECCE, ENV)", "If the label prints it, it is the better figure.")}},
			{Class: "pair", Fields: []askField{
				q.field("text", at+".pack", "A full pack is", "36 lb, 2.5 gal"),
				q.number(at+".on_hand", "Packs left", "0.5 is half a pack")}},
			{Legend: "More from the label", Folds: true, Fields: []askField{
				q.field("text", at+".name", "What you call it", ""),
				q.field("text", at+".slow_share", "Slow part of the nitrogen", "0.4 is 40 %"),
				q.field("text", at+".lasts", "How long it feeds, weeks", ""),
				q.number(at+".magnesium", "Magnesium, %", ""),
				q.number(at+".sulfur", "Sulfur, %", ""),
				q.number(at+".iron", "Iron, %", ""),
				choose(q.field("", at+".pesticide", "Weed, moss or insect killer in it?", "What has it is never planned here: its label dates it."), "select", "", "Not said", "true", "Yes", "false", "No")}},
		}})
		q.used[at+".analysis"] = true
	}
	return s
}

func (q *questions) already(areas []string) askScreen {
	s := askScreen{Title: "What went down already?", Lead: "Since the grass was sown, or in the last year. It counts against what may still be given. Nothing? Go on.", More: "line", MoreName: "And another"}
	lines := q.names("record")
	if len(lines) == 0 {
		lines = []string{"1"}
	}
	for i, n := range lines {
		at := "record." + n
		pairs := []string{"", "Nothing"}
		for j, id := range q.bags() {
			name := cmp.Or(q.get("material."+id+".name"), q.bagName(id))
			if name == "" {
				name = "bag " + strconv.Itoa(j+1)
			}
			pairs = append(pairs, id, word.Capital(name))
		}
		what := choose(q.field("", at+".material", "What?", "From the bags in the shed."), "select", pairs...)
		what.Errs = append(what.Errs, q.problems(at+".kind", "What", what.ID)...)
		on := q.field("date", at+".date", "On", "The day")
		much := q.field("text", at+".amount", "How much in all", "9 lb, 0.5 packs")
		g := askGroup{Class: "bag", Legend: "Spreading " + strconv.Itoa(i+1), Fields: []askField{what}, Groups: []askGroup{{Class: "pair", Fields: []askField{on, much}}}}
		if len(areas) > 1 {
			pairs := []string{"", "Choose"}
			for _, a := range areas {
				pairs = append(pairs, a, word.Capital(cmp.Or(q.get("area."+a+".name"), a)))
			}
			g.Groups = append(g.Groups, single(choose(q.field("", at+".area", "Where?", ""), "select", pairs...)))
		}
		s.Groups = append(s.Groups, g)
	}
	return s
}

// bagName describes a bag that was given no name, by its analysis or its kind.
func (q *questions) bagName(id string) string {
	at := "form.material." + id
	if n, p, k := q.get(at+".n"), q.get(at+".p"), q.get(at+".k"); n+p+k != "" {
		return "fertilizer " + cmp.Or(n, "0") + "-" + cmp.Or(p, "0") + "-" + cmp.Or(k, "0")
	}
	return q.get("material." + id + ".kind")
}

// weekdays are the days of work.
var weekdays = []string{"mon", "Monday", "tue", "Tuesday", "wed", "Wednesday", "thu", "Thursday", "fri", "Friday", "sat", "Saturday", "sun", "Sunday"}

func (q *questions) who(areas []string) askScreen {
	names := q.field("text", "form.people", "Names", "With commas between. Whoever has jobs can have a calendar of their own.")
	names.Errs = append(names.Errs, q.problems("crew.people", "Names", names.ID)...)
	s := askScreen{Title: "Who helps?", Lead: "Leave this empty if it is you alone.", Groups: []askGroup{single(names)}}
	for _, area := range areas {
		at, of := "form.who."+area, ""
		if len(areas) > 1 {
			of = " on " + cmp.Or(q.get("area."+area+".name"), area)
		}
		all := q.field("text", at, "Who does the jobs"+of+"?", "A name. Empty: whoever has time.")
		lime := q.field("text", at+".lime", "Who spreads the lime"+of+"?", "If it is somebody else.")
		for _, one := range []struct {
			field *askField
			key   string
		}{{&all, "crew.who." + area}, {&lime, `crew.who."` + area + `/lime"`}} {
			one.field.Errs = append(one.field.Errs, q.problems(one.key, one.field.Label, one.field.ID)...)
		}
		s.Groups = append(s.Groups, single(all), single(lime))
	}
	if q.File == "" {
		share := q.field("check", "form.share", "", "")
		share.Options = []askOption{{"yes", "Put the names into the link. Whoever has it can read them.", share.Value == "yes"}}
		s.Groups = append(s.Groups, single(share))
	}
	days := q.field("checks", "crew.days", "Days you can work", "None ticked is any day.")
	on := q.all("crew.days")
	for i := 0; i < len(weekdays); i += 2 {
		days.Options = append(days.Options, askOption{weekdays[i], weekdays[i+1], slices.Contains(on, weekdays[i])})
	}
	s.Groups = append(s.Groups, single(days))
	return s
}
