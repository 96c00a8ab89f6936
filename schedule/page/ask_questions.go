package page

import (
	"cmp"
	"slices"
	"strconv"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// FirstArea is the id of the one piece of grass that most people have.
const FirstArea = "lawn"

// screens makes the screens, one subject after the other.
func (q *questions) screens() []askScreen {
	areas := q.names("area")
	if len(areas) == 0 {
		areas = []string{FirstArea}
	}
	q.order = []string{"where"}
	for _, a := range areas {
		q.order = append(q.order, "grass-"+a, "sheet-"+a)
	}
	q.order = append(q.order, "shed", "already", "who")
	var out []askScreen
	add := func(id string, make func() askScreen) {
		q.screen = id
		s := make()
		s.ID, s.N = id, len(out)+1
		out = append(out, s)
	}
	add("where", q.where)
	for i, a := range areas {
		several := len(areas) > 1
		add("grass-"+a, func() askScreen { return q.grass(a, several) })
		add("sheet-"+a, func() askScreen { return q.sheet(a, several) })
		if i+1 == len(areas) {
			out[len(out)-1].More, out[len(out)-1].MoreName = "area", "Another piece of grass"
		}
	}
	add("shed", q.shed)
	add("already", func() askScreen { return q.already(areas) })
	add("who", func() askScreen { return q.who(areas) })
	for i := range out {
		if i+1 < len(out) {
			out[i].Next, out[i].NextName = out[i+1].ID, out[i+1].Title
		} else {
			out[i].Last = true
		}
	}
	return out
}

func single(f askField) askGroup { return askGroup{Fields: []askField{f}} }

// Understood says back which place was meant, and its last safe day.
func Understood(where string, lastSafe schedule.Date) (out []string) {
	if where == "" {
		return nil
	}
	out = []string{"Understood: " + where + "."}
	if !lastSafe.IsZero() {
		out = append(out, "Last safe day near "+lastSafe.DayMonth()+".")
	}
	return out
}

func (q *questions) where() askScreen {
	zip := q.field("text", "place.zip", "ZIP", "")
	zip.Auto = "postal-code"
	zip.Got = Understood(q.Where, q.LastSafe)
	title := q.field("text", "title", "What do you call this lawn?", "It names the calendar. Leave it empty for “My lawn”.")
	return askScreen{Title: "Where is it?", Groups: []askGroup{single(zip), single(title)}}
}

// tellSize, tellGrass and tellTexture explain how to find out.
var (
	tellSize = &askTell{Title: "No tape at hand?", Lines: []spoken{
		{"Steps", "Walk along it and across it. A grown person’s step is about 2½ ft: 16 steps are 40 ft."}, // [common]
		{"Less the house", "Take off what is no grass: 40 x 65 - 24 x 30 is the plot less the house."},
		{"Odd corners", "Cut the lawn into rectangles and add them: 40 x 30 + 20 x 15."},
	}, Note: "A tenth more or less changes every amount by a tenth, and nothing else."}
	tellGrass = &askTell{Title: "I do not know: how to tell", Lines: []spoken{ // [common] as extension offices teach it
		{"Kentucky bluegrass", "tip like the bow of a boat, two light lines along the middle of the blade; spreads below the ground."},
		{"Perennial ryegrass", "back of the blade shines like wax, base of the shoot is red; stands in tufts."},
		{"Tall fescue", "broad, coarse, ribbed blade with a rough edge; stands in tufts."},
		{"Fine fescue", "blade like a needle, often in shade."},
		{"Bermudagrass", "wiry runners above and below the ground, grey-green; straw-coloured all winter."},
		{"Zoysiagrass", "stiff, prickly, very dense; straw-coloured all winter."},
		{"St. Augustinegrass", "broad blade with a blunt tip, thick runners above the ground."},
		{"Centipedegrass", "yellow-green, short runners above the ground that look like the animal."},
	}, Note: "Take a handful with roots to the county extension office: they name it. Or choose by its colour in winter, and amounts stay cautious."}
	tellTexture = &askTell{Title: "I do not know: how to tell", Lines: []spoken{ // [common] the ribbon test, after Thien 1979, from memory
		{"Wet a handful", "knead it like putty, and press it out between thumb and finger."},
		{"Sand, loamy sand", "it forms no ribbon and falls apart."},
		{"Sandy loam", "a ribbon shorter than 1 in that feels gritty."},
		{"Loam, silt loam", "a ribbon shorter than 1 in; silt loam feels like flour."},
		{"Clay loam", "a ribbon of 1 to 2 in before it breaks."},
		{"Clay", "a ribbon longer than 2 in."},
	}, Note: "Without an answer it counts as loam, and the program says so."}
)

func (q *questions) grass(area string, several bool) askScreen {
	at := "area." + area
	s := askScreen{Title: "The grass"}
	if name := q.get(at + ".name"); several {
		f := q.field("text", at+".name", "Which piece of grass?", "A name, like East lawn.")
		s.Title = word.Capital(cmp.Or(name, area)) + ": the grass"
		s.Less = area
		s.Groups = append(s.Groups, single(f))
	}
	size := q.withUnit(q.field("text", at+".size", "How big is the grass?", "In square feet, or its sides less the house: 40 x 65 - 24 x 30"), at+".size")
	size.Tell = tellSize
	mixture := q.mixture(at) // made before the grass, whose field shows the problems of the mixture as a whole
	grass := q.field("select", at+".grass", "Which grass?", "The seed bag says it.")
	pairs := []string{"", "Choose"}
	for _, g := range q.Grasses {
		pairs = append(pairs, g, word.Capital(g))
	}
	pairs = append(pairs, "mixture", "A mixture", "green", "I do not know; it is green in winter", "straw", "I do not know; it is straw-coloured in winter")
	grass = choose(grass, "select", pairs...)
	grass.Tell = tellGrass
	s.Groups = append(s.Groups, single(size), single(grass))
	s.Groups = append(s.Groups, mixture)
	sown := q.field("date", at+".seeded", "Sown when?", "A day to come is when you mean to sow. Leave it empty if it is older than a year.")
	over := q.field("date", at+".overseed", "Sowing seed over thin grass?", "The day on which you mean to, or did. Else leave it empty.")
	care := choose(q.field("", at+".care", "How much care?", ""), "select", "medium", "Medium: mowed weekly, looks cared for", "low", "Low: shade, or left mostly alone", "high", "High: sport, or a show lawn")
	clip := choose(q.field("", at+".clippings", "Clippings", ""), "radio", "returned", "stay on the grass", "removed", "are removed")
	s.Groups = append(s.Groups, single(sown), single(over), single(care), single(clip))
	if !several {
		q.get(at + ".name")
		q.used[at+".name"] = false // sent along in a hidden field
	}
	return s
}

// mixture gives the rows of a mixture: those that were filled in, and empty ones up to
// three.
func (q *questions) mixture(at string) askGroup {
	g := askGroup{Class: "mix", Legend: "What is in the mixture?", Hint: "The parts, in percent, stand on the seed bag."}
	table := "form." + at + ".mix"
	rows := q.names(table)
	for n := 1; len(rows) < 3; n++ {
		if row := strconv.Itoa(n); !slices.Contains(rows, row) {
			rows = append(rows, row)
		}
	}
	for i, row := range rows {
		n := strconv.Itoa(i + 1)
		grass := q.field("select", table+"."+row+".grass", "Grass "+n, "")
		pairs := []string{"", "None"}
		for _, name := range q.Grasses {
			pairs = append(pairs, name, word.Capital(name))
		}
		grass = choose(grass, "select", pairs...)
		key := at + ".grass." + grass.Value
		share := q.field("text", table+"."+row+".share", "Part "+n+", %", "")
		share.Type = "number"
		for _, p := range q.Problems { // its key may stand in quotes
			if grass.Value != "" && unquoted(p.Key) == key {
				share.Errs = append(share.Errs, q.problems(p.Key, "Part "+n, share.ID)...)
			}
		}
		g.Fields = append(g.Fields, grass, share)
	}
	return g
}

func (q *questions) sheet(area string, several bool) askScreen {
	at := "area." + area + ".soil"
	s := askScreen{Title: "The lab sheet", Lead: "No report yet? Leave this empty and go on: the sample becomes the first job."}
	if several {
		s.Title = word.Capital(cmp.Or(q.get("area."+area+".name"), area)) + ": the lab sheet"
	}
	sampled := q.field("date", at+".sampled", "Sampled on", "")
	method := q.field("", at+".method", "How the lab extracted P and K", "Small print at the foot of the sheet.")
	methods := []string{"", "Not named"}
	for _, m := range q.Methods {
		methods = append(methods, m, methodName(m))
	}
	method = choose(method, "select", methods...)
	ph := q.number(at+".ph", "pH", "")
	buffer := q.number(at+".buffer.ph", "Buffer pH", "")
	by := q.field("", at+".buffer.method", "Buffer by", "")
	buffers := []string{"", "Not named"}
	for _, b := range q.Buffers {
		buffers = append(buffers, b, methodName(b))
	}
	by = choose(by, "select", buffers...)
	unit := q.field("", "form."+at+".unit", "Readings are in", "")
	unit = choose(unit, "radio", "ppm", "ppm or mg/kg", "lb/acre", "lb/acre")
	s.Groups = []askGroup{single(sampled), single(method), single(ph), {Class: "pair", Fields: []askField{buffer, by}}, single(unit),
		{Class: "sheet", Legend: "Readings", Hint: "Leave empty what the sheet does not give. If it prints P₂O₅ or K₂O, write so: 61 ppm P2O5.", Fields: []askField{
			q.number(at+".phosphorus", "Phosphorus, P", ""), q.number(at+".potassium", "Potassium, K", ""), q.number(at+".magnesium", "Magnesium, Mg", "")}},
		{Class: "sheet", Legend: "More from the sheet", Folds: true, Fields: []askField{
			q.number(at+".calcium", "Calcium, Ca", ""), q.number(at+".sulfur", "Sulfur, S", ""), q.number(at+".sodium", "Sodium, Na", ""), q.number(at+".iron", "Iron, Fe", ""),
			q.number(at+".cec", "CEC, meq/100 g", ""), q.number(at+".acidity", "Acidity, meq/100 g", ""), q.number(at+".organic_matter", "Organic matter, %", ""), q.number(at+".depth", "Depth of the sample, in", "")}},
	}
	asks := askGroup{Legend: "What the lab itself asks for", Hint: "If it is printed, it counts more than any table. For the whole year.", Class: "asks"}
	for _, one := range [][2]string{{"lime", "Lime"}, {"nitrogen", "Nitrogen, N"}, {"phosphate", "Phosphate, P₂O₅"}, {"potash", "Potash, K₂O"}} {
		asks.Fields = append(asks.Fields, q.withUnit(q.number(at+"."+one[0], one[1], ""), at+"."+one[0]))
	}
	s.Groups = append(s.Groups, asks)
	texture := q.field("", "area."+area+".texture", "What is the soil?", "The sheet may say, or the hand.")
	textures := []string{"", "I do not know"}
	for _, t := range q.Textures {
		textures = append(textures, t, word.Capital(t))
	}
	texture = choose(texture, "select", textures...)
	texture.Tell = tellTexture
	s.Groups = append(s.Groups, single(texture))
	return s
}

func (q *questions) number(name, label, hint string) askField {
	return q.field("number", name, label, hint)
}

// methodName writes the name of a laboratory's method as sheets do.
func methodName(m string) string {
	switch m {
	case "smp":
		return "SMP"
	case "bray-1":
		return "Bray P1"
	case "mehlich-1", "mehlich-3":
		return word.Capital(m)
	case "adams-evans":
		return "Adams-Evans"
	}
	b := []byte(m)
	for i := range b {
		if b[i] == '-' {
			b[i] = ' '
		}
	}
	name := word.Capital(string(b))
	if m == "modified-mehlich" || m == "modified-morgan" {
		name = "Modified " + word.Capital(m[len("modified-"):])
	}
	return name
}

// Screens lists the subjects of the page, by their names in it, in order.
func Screens(a Asked) []string {
	q := newQuestions(a)
	q.screens()
	return q.order
}
