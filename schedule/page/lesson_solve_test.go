package page_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"swardbook/schedule/word"
)

// paper is a worksheet as a student has it: what is printed, and no more.
type paper struct {
	t         *testing.T
	name      string
	tables    map[string][][]string // by caption; the first row is the head
	rules     []string
	questions []string
}

// readPaper reads a worksheet off its HTML.
func readPaper(t *testing.T, name string, b []byte) *paper {
	t.Helper()
	p := &paper{t: t, name: name, tables: map[string][][]string{}}
	caption := ""
	for _, e := range elements(t, name, b) {
		text := strings.ReplaceAll(plain(e.text), "\u00a0", " ")
		switch {
		case e.name == "caption":
			caption = text
		case e.name == "tr":
			p.tables[caption] = append(p.tables[caption], nil)
		case e.name == "th" || e.name == "td":
			rows := p.tables[caption]
			rows[len(rows)-1] = append(rows[len(rows)-1], text)
		case e.name == "li":
			p.rules = append(p.rules, text)
		case e.name == "div" && e.attr["class"] == "q":
			text, _, _ = strings.Cut(text, "The year of the place")
			p.questions = append(p.questions, strings.TrimSpace(strings.TrimLeft(text, "0123456789 ")))
		}
	}
	return p
}

// table finds a table by how its caption begins, and gives the whole caption.
func (p *paper) table(begins string) (string, [][]string) {
	for caption, rows := range p.tables {
		if strings.HasPrefix(caption, begins) {
			return caption, rows
		}
	}
	p.t.Fatalf("%s: no table %q", p.name, begins)
	return "", nil
}

// cell looks a value up by the names of its row and column.
func (p *paper) cell(table, row, column string) string {
	_, rows := p.table(table)
	c := slices.Index(rows[0], column)
	for _, r := range rows[1:] {
		if r[0] == row && c >= 0 {
			return r[c]
		}
	}
	p.t.Fatalf("%s: table %q has no %q, %q: %v", p.name, table, row, column, rows)
	return ""
}

// fact reads the lawn or its report; "" it is not there.
func (p *paper) fact(name string) string {
	for caption, rows := range p.tables {
		if caption != "The lawn" && !strings.HasPrefix(caption, "The soil report") {
			continue
		}
		for _, r := range rows {
			if r[0] == name {
				return r[1]
			}
		}
	}
	return ""
}

// rule finds a rule and reads the groups of the pattern in it.
func (p *paper) rule(pattern string) []string {
	re := regexp.MustCompile(pattern)
	for _, r := range p.rules {
		if g := re.FindStringSubmatch(r); g != nil {
			return g
		}
	}
	return nil
}

func (p *paper) must(pattern string) []string {
	g := p.rule(pattern)
	if g == nil {
		p.t.Fatalf("%s: no rule says %q:\n%s", p.name, pattern, strings.Join(p.rules, "\n"))
	}
	return g
}

var figureIn = regexp.MustCompile(`-?[0-9][0-9,]*(\.[0-9]+)?`)

// num is the last figure in a text.
func num(text string) float64 {
	all := figureIn.FindAllString(text, -1)
	if len(all) == 0 {
		return math.NaN()
	}
	v, _ := strconv.ParseFloat(strings.ReplaceAll(all[len(all)-1], ",", ""), 64)
	return v
}

// first is the first figure in a text.
func first(text string) float64 { return num(figureIn.FindString(text)) }

// parts are the grasses with their shares.
func (p *paper) parts() map[string]float64 {
	out := map[string]float64{}
	for part := range strings.SplitSeq(p.fact("Grass"), ", ") {
		name, share := strings.TrimSpace(figureIn.ReplaceAllString(strings.TrimSuffix(part, " %"), "")), 100.0
		if strings.HasSuffix(part, "%") {
			share = num(part)
		}
		out[strings.ToUpper(name[:1])+name[1:]] = share
	}
	sum := 0.0
	for _, s := range out {
		sum += s
	}
	for name := range out {
		out[name] /= sum
	}
	return out
}

// inAll is a rate on the whole lawn.
func (p *paper) inAll(rate float64) float64 { return rate * num(p.size()) / 1000 }
func (p *paper) size() string {
	s, _, _ := strings.Cut(p.fact("Size"), " ")
	return s
}

func (p *paper) day(text string) time.Time {
	m := regexp.MustCompile(`[0-9]{1,2} [A-Z][a-z]{2} [0-9]{4}`).FindString(text)
	d, err := time.Parse("2 Jan 2006", m)
	if err != nil {
		p.t.Fatalf("%s: no day in %q", p.name, text)
	}
	return d
}

// young tells a stand less than a year old when the plan begins.
func (p *paper) young() bool {
	sown := p.fact("Sown")
	return sown != "" && p.day(p.fact("Plan begins")).Before(p.day(sown).AddDate(1, 0, 0))
}

// level places a reading on its scale.
func (p *paper) level(reading string) string {
	v := first(p.fact(reading))
	at := func(column string) float64 { return num(p.cell("Levels", reading, column)) }
	switch {
	case v < at("very low"):
		return "very low"
	case v < at("low"):
		return "low"
	case v <= at("medium"):
		return "medium"
	case v <= at("high"):
		return "high"
	}
	return "very high"
}

// ranges is the pH that all grasses share.
func (p *paper) ranges() (low, high float64) {
	low, high = 0, 14
	_, rows := p.table("pH that suits")
	for _, r := range rows[1:] {
		low, high = max(low, first(r[1])), min(high, num(r[1]))
	}
	return low, high
}

func (p *paper) aim() (aim, below float64) {
	if at := p.fact("pH aimed at"); at != "" {
		return num(at), num(at) - num(p.must(`more than ([0-9.]+) under it`)[1])
	}
	for grass, share := range p.parts() {
		aim += share * num(p.cell("pH that suits", grass, "Best"))
	}
	low, _ := p.ranges()
	return math.Round(aim*100) / 100, low
}

// acts is the part of the stone that acts, as a fraction of 1.
func (p *paper) acts() float64 {
	caption, rows := p.table("The stone")
	if rows[0][0] == "On the bag" {
		return num(rows[1][1]) / 100
	}
	sum := 0.0
	for _, r := range rows[1:] {
		sum += num(r[1]) / 100 * num(r[2]) / 100
	}
	return num(caption) / 100 * sum
}

func (p *paper) stone() float64 {
	aim, _ := p.aim()
	_, rows := p.table("Fully effective lime")
	reading := p.fact("pH")
	if rows[0][0] == "Buffer pH" {
		for _, r := range []string{"SMP", "Sikora", "Adams-Evans", "Mehlich", "modified Mehlich"} {
			if v := p.fact("Buffer pH (" + r + ")"); v != "" {
				reading = v
			}
		}
	}
	column := slices.IndexFunc(rows[0], func(h string) bool { return strings.HasPrefix(h, "to ") && math.Abs(num(h)-aim) < 0.006 })
	for _, r := range rows[1:] {
		if r[0] == reading && column > 0 {
			return num(r[column]) / p.acts()
		}
	}
	p.t.Fatalf("%s: no lime from %s to %v in %v", p.name, reading, aim, rows)
	return 0
}

func (p *paper) yearN() float64 {
	column := map[string]string{"low": "low care", "medium": "medium", "high": "high"}[p.fact("Care")]
	sum := 0.0
	for grass, share := range p.parts() {
		sum += share * num(p.cell("A year's nitrogen", grass, column))
	}
	if p.fact("Clippings") == "stay on the lawn" {
		p.must(`Where clippings stay, take off a quarter`)
		sum *= 0.75
	}
	sum = num(word.Figures(sum, 3)) // as the sheet writes it
	if g := p.rule(`in its first year a stand gets ([0-9.]+) \w+ at the least and ([0-9.]+)`); g != nil {
		return min(max(sum, num(g[1])), num(g[2]))
	}
	if g := p.rule(`no more than ([0-9.]+) \w+ a year`); g != nil {
		return min(sum, num(g[1]))
	}
	return sum
}

// firstFeed is the nitrogen of the first feeding and the rate of its feed.
func (p *paper) firstFeed() (n, rate float64) {
	g := p.must(`The first feeding brings ([0-9.]+) \w+ N\. .*: ([0-9.]+) % N`)
	return num(g[1]), num(g[1]) / num(g[2]) * 100
}

// solve answers one question from the paper, by the names that the key uses.
func (p *paper) solve(q string) map[string]string {
	out := map[string]string{}
	put := func(name string, v float64) { out[name] = strconv.FormatFloat(v, 'f', -1, 64) }
	has := func(words string) bool { return strings.Contains(q, words) }
	switch {
	case has("on their scales"):
		_, rows := p.table("Levels")
		for _, r := range rows[1:] {
			out[r[0]] = p.level(r[0])
		}
	case has("this grass most"), has("limit this grass"):
		short, rich := p.ranking()
		out["Limits"], out["More than enough"] = "none", rich
		for i, s := range short[:min(2, len(short))] {
			out[[]string{"Limits most", "Then"}[i]] = s
		}
	case has("Which pH is the aim"):
		aim, below := p.aim()
		put("Aim, pH", aim)
		out["Lime due"] = map[bool]string{true: "yes", false: "no"}[num(p.fact("pH")) < below-1e-9]
	case has("of this stone does the lawn need"):
		put("Share that acts", 100*p.acts())
		put("Stone", p.stone())
	case has("In how many dressings"):
		most := num(p.must(`At most ([0-9.,]+) \w+ of stone`)[1])
		n := math.Ceil(p.stone() / most)
		put("Dressings", n)
		put("Each, in all", p.inAll(p.stone()/n))
		caption, _ := p.table("The stone")
		if g := regexp.MustCompile(`([0-9.]+) (lb|kg) packs`).FindStringSubmatch(caption); g != nil {
			put("Packs each time", p.inAll(p.stone()/n)/num(g[1]))
		}
	case has("get in a year?"), has("get in its first year?"):
		put("Nitrogen a year", p.yearN())
	case has("How much of it belongs to the"):
		g := p.must(`Of a year's nitrogen (\w+) gets ([0-9.]+) parts of 1`)
		part := p.yearN() * num(g[2])
		caps := p.must(`no more than ([0-9.]+) \w+ N in all, and no more than ([0-9.]+) \w+ of quick N`)
		quick := 1 - num(p.must(`([0-9.]+) % of its nitrogen is slow`)[1])/100
		most := num(caps[1])
		if quick > 0 {
			most = min(most, num(caps[2])/quick)
		}
		put("Part of the "+g[1], part)
		put("Feedings", math.Ceil(part/most))
		put("Each feeding", part/math.Ceil(part/most))
	case has("take in all"):
		if has("How much water") {
			deep := first(p.must(`Water in ([0-9.]+)`)[1])
			if g := p.rule(`1 in of water on 1,000 sq ft is ([0-9]+) gal`); g != nil {
				put("Water in all", p.inAll(deep*num(g[1])))
			} else {
				put("Water in all", deep*num(p.size()))
			}
			break
		}
		_, rate := p.firstFeed()
		put("Feed in all", p.inAll(rate))
		if g := p.rule(`It weighs ([0-9.]+)`); g != nil {
			put("Volume in all", p.inAll(rate)/num(g[1]))
		}
		for _, of := range []string{"P₂O₅", "K₂O"} {
			if g := p.rule(`The first feeding brings .* ([0-9.]+) % ` + of); g != nil {
				put("Brings "+of, rate*num(g[1])/100)
			}
		}
	case has("gave the first feeding twice"):
		put("Left of the year", p.yearN()-2*num(p.must(`The first feeding is ([0-9.]+)`)[1]))
	case has("does the level of"):
		g := regexp.MustCompile(`How much (\S+) a year does the level of (\w+)`).FindStringSubmatch(q)
		reading := strings.ToUpper(g[2][:1]) + g[2][1:]
		year := num(p.cell(g[1]+" a year by level", g[1], p.level(reading)))
		left := year
		if r := p.rule(`The year's feedings, .*, bring ([0-9.]+) \w+ ` + g[1]); r != nil {
			left -= num(r[1])
		}
		put(g[1]+" a year", year)
		put(reading+" in all", p.inAll(left/num(p.must(`The bag is .*: ([0-9.]+) % ` + g[1])[1])*100))
	case has("How many minutes"):
		put("Minutes", num(p.must(`Water in ([0-9.]+)`)[1])/num(p.must(`The sprinkler brings ([0-9.]+)`)[1])*60)
	case has("To which rate is the spreader set"):
		put("Spreader set to", num(p.must(`spreads ([0-9.,]+) \w+ of`)[1])/2)
		if g := p.rule(`It covers ([0-9.]+)`); g != nil {
			put("Walk each way", num(p.size())/num(g[1]))
		}
	case has("How many times is the tank filled"):
		g := p.must(`The tank holds ([0-9.]+) \w+\. 1 \w+ of spray covers ([0-9.,]+) .*sprays ([0-9.,]+)`)
		tank := num(g[1]) * num(g[2])
		put("Fills", math.Ceil(num(p.size())/tank))
		put("In a full tank", num(g[3])*tank/num(p.size()))
	case has("Draw the window"):
		p.days(q, out)
	default:
		p.t.Errorf("%s: nobody knows how to solve %q", p.name, q)
	}
	return out
}

// ranking gives what is short, in the order of the rules, and what there is more
// than enough of.
func (p *paper) ranking() (short []string, rich string) {
	low, high := p.ranges()
	ph := num(p.fact("pH"))
	extreme := p.must(`First a pH under ([0-9.]+) .* or over ([0-9.]+)`)
	outside := ph < low || ph > high
	at := func(reading string) string {
		if _, rows := p.table("Levels"); slices.ContainsFunc(rows, func(r []string) bool { return r[0] == reading }) {
			return p.level(reading)
		}
		return ""
	}
	isShort := func(reading string) bool { return strings.HasSuffix(at(reading), "low") }
	add := func(name string, is bool) {
		if is && !slices.Contains(short, name) {
			short = append(short, name)
		}
	}
	p.must(`then phosphorus, low or very low, under a stand less than a year old`)
	add("pH", outside && (ph < num(extreme[1]) && ph < low || ph > num(extreme[2])))
	add("phosphorus", p.young() && isShort("Phosphorus"))
	add("pH", outside)
	var ample []string
	for name := range strings.SplitSeq(p.must(`then, low or very low, ([a-z, ]+)\.`)[1], ", ") {
		add(name, isShort(strings.ToUpper(name[:1])+name[1:]))
		if strings.HasSuffix(at(strings.ToUpper(name[:1])+name[1:]), "high") {
			ample = append(ample, name)
		}
	}
	rich = strings.Join(ample, ", ")
	if i := strings.LastIndex(rich, ", "); i >= 0 {
		rich = rich[:i] + " and " + rich[i+2:]
	}
	if rich == "" {
		rich = "none"
	}
	return short, rich
}

// days draws the windows and picks the days.
func (p *paper) days(q string, out map[string]string) {
	var up, mown time.Time
	if g := p.rule(`Most of the stand is up ([0-9]+) days after sowing\. Nothing is spread before its first mowing, ([0-9]+) days later`); g != nil {
		up = p.day(p.fact("Sown")).AddDate(0, 0, int(num(g[1])))
		mown = up.AddDate(0, 0, int(num(g[2])))
	}
	works := func(d time.Time) bool {
		_, rows := p.table("The lawn")
		for _, r := range rows {
			if from, to, ok := strings.Cut(r[1], " to "); r[0] == "Away" && ok && !d.Before(p.day(from)) && !d.After(p.day(to)) {
				return false
			}
		}
		days := p.fact("Work days")
		return days == "every day" || strings.Contains(days, d.Weekday().String())
	}
	chosen := map[string]time.Time{}
	names := regexp.MustCompile(`the first ([a-z ]+?)(?: and| into)`).FindAllStringSubmatch(q, -1)
	for _, g := range names {
		name := g[1]
		title := strings.ToUpper(name[:1]) + name[1:]
		rule := p.must(`^` + title + ` (may go down from|goes down from) (.*), until (.*?)[.,]( |$|its)`)
		from := time.Time{}
		switch {
		case rule[2] == "the first mowing":
			from = mown
		case strings.HasSuffix(rule[2], "days after most of the stand is up"):
			from = up.AddDate(0, 0, int(first(rule[2])))
		default:
			from = p.day(rule[2])
		}
		until := p.day(rule[3])
		soonest := from
		for other, d := range chosen {
			if g := p.rule(`^At least ([0-9]+) days lie between ` + other + ` and ` + name + `\.`); g != nil {
				if after := d.AddDate(0, 0, int(num(g[1]))); after.After(soonest) {
					soonest = after
				}
			}
		}
		best := soonest
		if g := p.rule(`The best day for ` + name + ` is (.*?):`); g != nil {
			best = p.day(g[1])
		}
		var day time.Time
		for away := 0; day.IsZero() && away < 400; away++ {
			for _, d := range []time.Time{best.AddDate(0, 0, -away), best.AddDate(0, 0, away)} {
				if day.IsZero() && !d.Before(soonest) && !d.After(until) && works(d) {
					day = d
				}
			}
		}
		chosen[name] = day
		out[title+" from"] = from.Format("2 Jan 2006")
		out[title+" until"] = until.Format("2 Jan 2006")
		out[title+" on"] = day.Format("Mon 2 Jan 2006")
	}
}

// agree compares an answer with the key's: words as they stand, figures to 1 %,
// which three printed figures allow.
func agree(mine, key string) error {
	if mine == key {
		return nil
	}
	v, err := strconv.ParseFloat(mine, 64)
	if err != nil {
		return fmt.Errorf("%q, the key says %q", mine, key)
	}
	if w := first(key); math.IsNaN(w) || math.Abs(v-w) > 0.01*math.Abs(w) {
		return fmt.Errorf("%v, the key says %q", v, key)
	}
	return nil
}
