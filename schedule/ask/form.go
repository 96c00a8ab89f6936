package ask

import (
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// A form is what stands in the fields of the ask page, name and text, as typed. Most
// fields are named by the key that they fill. What a person gives in parts has fields of
// its own, whose names begin with "form.":
//
//	form.KEY.unit                the unit of a number, if it is typed without one
//	form.area.lawn.mix.1.grass   a grass of a mixture, and .share, its part in percent
//	form.material.bag1.n         the three numbers on a bag: n, p, k
//	form.record.1.was            the material of a line, as the page was written
//	form.people                  names, with commas between
//	form.who.lawn                the name of who does the jobs of an area, form.who.lawn.lime of who limes it
//
// [FromForm] and [ToForm] go between the two.
type Form = Answers

// parts begins the names of fields that fill no key by themselves.
const parts = "form."

// What the field of the grass may say beside the name of a grass.
const (
	Mixture   = "mixture"
	NotKnown  = "green" // not known, and green through the winter
	NotKnownW = "straw" // not known, and straw-coloured in winter
)

// guesses are the grasses of a lawn of which nobody knows more than its colour in winter.
var guesses = map[string][]string{
	NotKnown:  {"Kentucky bluegrass", "40", "perennial ryegrass", "30", "fine fescue", "30"}, // [common] a usual mixture for sun and shade
	NotKnownW: {"zoysiagrass", "100"},                                                        // [common] fed less than bermudagrass, more than centipedegrass
}

// units are those of a number that was typed without one.
var units = map[string]string{
	"place.elevation": "ft", "place.water_within": "ft", "area.*.sprinkler": "in/h",
	"area.*.size": "sq ft", "area.*.soil.depth": "in", "area.*.soil.organic_matter": "%",
	"area.*.soil.lime": "lb/1000 sq ft", "area.*.soil.nitrogen": "lb/1000 sq ft", "area.*.soil.phosphate": "lb/1000 sq ft", "area.*.soil.potash": "lb/1000 sq ft",
	"material.*.pack": "lb", "material.*.lasts": "weeks", "record.*.amount": "lb",
}

// sheetReadings are the keys of a report that share one unit on the sheet.
var sheetReadings = []string{"phosphorus", "potassium", "calcium", "magnesium", "sulfur", "sodium", "iron"}

func answer(key, value string) Answer { return Answer{Key: key, Value: value} }

// FromForm reads the answers out of a form. What was typed goes along as it is, right or
// wrong: [Load] says which.
func FromForm(f Form) Answers {
	var out Answers
	for _, one := range f {
		one.Value = strings.TrimSpace(one.Value)
		if one.Value == "" || strings.HasPrefix(one.Key, parts) {
			continue
		}
		names := strings.Split(one.Key, ".")
		switch {
		case names[0] == "area" && len(names) == 3 && names[2] == "grass":
			out = append(out, f.grass(names[1], one)...)
			continue
		case f.asksWho(one.Key):
			continue
		case below(one.Key, "crew.people"), names[0] == "record" && !f.lineKeeps(names):
			continue
		case names[0] == "material" && names[len(names)-1] == "analysis" && len(names) == 3:
			continue
		}
		one.Value = f.withUnit(one)
		out = append(out, one)
	}
	bags := f.Names("material")
	for _, bag := range f.Names("form.material") {
		if !slices.Contains(bags, bag) {
			bags = append(bags, bag)
		}
	}
	for _, bag := range bags {
		out = append(out, f.bag(bag)...)
	}
	for _, n := range f.Names("record") {
		out = append(out, f.line(n, out)...)
	}
	return append(out, f.people()...)
}

// grass reads the grass of an area: a name, or a mixture with its shares.
func (f Form) grass(area string, one Answer) (out Answers) {
	pairs := guesses[one.Value]
	if one.Value == Mixture {
		for _, row := range f.Names("form.area." + area + ".mix") {
			at := "form.area." + area + ".mix." + row
			if grass := f.Get(at + ".grass"); grass != "" {
				pairs = append(pairs, grass, f.Get(at+".share"))
			}
		}
	}
	if len(pairs) == 0 {
		if one.Value == Mixture {
			return nil // [Load] then says that it is missing
		}
		return Answers{one}
	}
	for i := 0; i < len(pairs); i += 2 {
		share := pairs[i+1]
		if share == "" {
			share = "0" // [Load] then says that it is too little
		}
		out = append(out, answer(one.Key+"."+quoted(pairs[i]), share))
	}
	return out
}

// quoted writes a name as a part of a key.
func quoted(name string) string {
	for _, c := range name {
		if !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_') {
			return strconv.Quote(name)
		}
	}
	return name
}

// withUnit gives a number its unit, if it was typed without one.
func (f Form) withUnit(one Answer) string {
	pattern, group := pattern(one.Key)
	unit, known := units[pattern]
	if chosen := f.Get(parts + one.Key + ".unit"); chosen != "" {
		unit, known = chosen, true
	} else if group != "" {
		unit, known = f.Get(parts+group+".unit"), true
		if unit == "" {
			unit = "ppm"
		}
	}
	switch {
	case !known:
	case strings.HasSuffix(one.Key, ".size") && sides(one.Value):
		if strings.HasPrefix(unit, "sq m") {
			return one.Value + " m"
		}
		return one.Value + " ft"
	case bare(one.Value):
		return one.Value + " " + unit
	}
	return one.Value
}

// pattern gives the key with a * for the names of the writer's choice, and for a reading
// the table whose unit it shares.
func pattern(key string) (p, group string) {
	names := strings.Split(key, ".")
	if len(names) > 1 && slices.Contains([]string{"area", "material", "record"}, names[0]) {
		names[1] = "*"
	}
	if len(names) == 4 && names[2] == "soil" && slices.Contains(sheetReadings, names[3]) {
		group = key[:strings.LastIndexByte(key, '.')]
	}
	return strings.Join(names, "."), group
}

// bare tells a plain number.
func bare(text string) bool {
	_, rest, ok := agronomy.Number(text)
	return ok && rest == ""
}

// sides tells whether a text is a length times a width, without a unit.
func sides(text string) bool {
	return strings.ContainsAny(text, "x×*") && !strings.ContainsFunc(text, func(c rune) bool { return !strings.ContainsRune("0123456789.,/ x×*+-−", c) })
}

// bag reads what has fields of its own on a bag: its three numbers, and a name if none
// was typed.
func (f Form) bag(id string) (out Answers) {
	at := "material." + id
	n, p, k := f.Get(parts+at+".n"), f.Get(parts+at+".p"), f.Get(parts+at+".k")
	analysis := ""
	if n+p+k != "" {
		for i, s := range []*string{&n, &p, &k} {
			if *s = strings.TrimSpace(*s); *s == "" {
				*s = "0"
			}
			if i > 0 {
				analysis += "-"
			}
			analysis += *s
		}
		out = append(out, answer(at+".analysis", analysis))
	}
	if name := usualName(f.Get(at+".kind"), analysis); name != "" && strings.TrimSpace(f.Get(at+".name")) == "" {
		out = append(out, answer(at+".name", name))
	}
	return out
}

// usualName names a bag by what it is.
func usualName(kind, analysis string) string {
	switch kind {
	case "lime":
		return "limestone"
	case "fertilizer", "":
		if analysis != "" {
			return "fertilizer " + analysis
		}
	}
	return kind
}

// lineKeeps tells the cells of a line of the record book that are its own: all, unless
// another material was chosen than the one it was written with.
func (f Form) lineKeeps(names []string) bool {
	if len(names) != 3 || slices.Contains([]string{"date", "area", "material", "amount", "by", "note"}, names[2]) {
		return true
	}
	at := record + names[1]
	return f.Get(parts+at+".was") == f.Get(at+".material")
}

// starterDays is how long before and after the sowing a feed with phosphorus is its
// starter.
const starterDays = 28 // [common] seedlings draw on it in their first month

// line works out the kind of a job that went down, where the line does not say it.
func (f Form) line(n string, a Answers) Answers {
	at := record + n
	if a.Get(at+".kind") != "" || a.Get(at+".job") != "" || f.Get(at+".date")+f.Get(at+".material")+f.Get(at+".amount") == "" {
		return nil
	}
	bag := "material." + f.Get(at+".material")
	kind := a.Get(bag + ".kind")
	if kind == "" || kind == "fertilizer" {
		kind = "nitrogen"
		got, err := agronomy.ParseAnalysis(a.Get(bag + ".analysis"))
		switch {
		case err != nil:
		case got.P2O5 > 0 && f.nearSowing(at):
			kind = "starter"
		case got.N == 0 && got.P2O5 > 0:
			kind = "phosphorus"
		case got.N == 0 && got.K2O > 0:
			kind = "potassium"
		}
	}
	if kind == "wood ash" {
		kind = "lime"
	}
	return Answers{answer(at+".kind", kind)}
}

func (f Form) nearSowing(at string) bool {
	area := f.Get(at + ".area")
	if all := f.Names("area"); area == "" && len(all) == 1 {
		area = all[0]
	}
	on, err := schedule.ParseDate(f.Get(at + ".date"))
	if err != nil {
		return false
	}
	return slices.ContainsFunc([]string{".seeded", ".overseed"}, func(key string) bool {
		sown, err := schedule.ParseDate(f.Get("area." + area + key))
		days := on.DaysFrom(sown)
		return err == nil && -starterDays <= days && days <= starterDays
	})
}

// people reads the names of those who help. A person keeps the id from before.
func (f Form) people() (out Answers) {
	ids := map[string]string{}
	for _, one := range f {
		if id, ok := strings.CutPrefix(one.Key, "crew.people."); ok {
			ids[one.Value] = id
		}
	}
	named := strings.Split(f.Get("form.people"), ",")
	whose := map[string]string{} // who does what, by name
	var jobs []string
	for _, one := range f {
		if at, ok := strings.CutPrefix(one.Key, who); ok && strings.TrimSpace(one.Value) != "" {
			area, lime := strings.CutSuffix(at, ".lime")
			if lime {
				area += "/lime"
			}
			jobs, whose[area] = append(jobs, area), strings.TrimSpace(one.Value)
			named = append(named, one.Value)
		}
	}
	done := map[string]string{} // ids by name
	for _, name := range named {
		name = strings.TrimSpace(name)
		if name == "" || done[name] != "" {
			continue
		}
		id := ids[name]
		if id == "" {
			id = idOf(name)
		}
		for taken, n := id, 2; out.Get("crew.people."+id) != ""; n++ {
			id = taken + strconv.Itoa(n)
		}
		done[name] = id
		out = append(out, answer("crew.people."+id, name))
	}
	for _, job := range jobs {
		out = append(out, answer("crew.who."+quoted(job), done[whose[job]]))
	}
	return out
}

// who begins the fields that name who does the jobs of an area.
const who = "form.who."

// whoField gives the field in which the page asks who does the jobs of a key; "" it does
// not.
func whoField(key string, areas []string) string {
	jobs, ok := strings.CutPrefix(strings.ReplaceAll(key, `"`, ""), "crew.who.")
	area, lime := strings.CutSuffix(jobs, "/lime")
	switch {
	case !ok || !slices.Contains(areas, area):
		return ""
	case lime:
		return who + area + ".lime"
	}
	return who + area
}

// asksWho tells whether a field of the form takes the place of a key.
func (f Form) asksWho(key string) bool {
	field := whoField(key, f.Names("area"))
	return field != "" && slices.ContainsFunc(f, func(one Answer) bool { return one.Key == field })
}

// idOf makes an id of a name.
func idOf(name string) string {
	id := strings.Trim(strings.Map(func(c rune) rune {
		switch {
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9':
			return c
		case c >= 'A' && c <= 'Z':
			return c - 'A' + 'a'
		case c == ' ', c == '-', c == '_':
			return '-'
		}
		return -1
	}, name), "-")
	if id == "" {
		return "person"
	}
	return id
}
