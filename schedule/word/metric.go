package word

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The rules calculate and write sentences in the units of their sources: pounds, inches,
// degrees Fahrenheit. Say puts a sentence into the site's units at the very end, so that
// no rule has to know them.

// Say gives a sentence in the site's units. A figure in brackets is not converted; if it
// is the metric value of the figure before it, the two change places. quoted says that
// the sentence tells what a source prints: then the figure as printed follows in
// brackets. Names are kept as they are.
func (m Measure) Say(text string, quoted bool, names ...string) string {
	if !m.Metric || !american.MatchString(text) {
		return text
	}
	for _, name := range names {
		if name != "" && american.MatchString(name) {
			if i := strings.Index(text, name); i >= 0 {
				return m.Say(text[:i], quoted, names...) + name + m.Say(text[i+len(name):], quoted, names...)
			}
		}
	}
	for _, p := range phrases {
		text = strings.ReplaceAll(text, p[0], p[1])
	}
	if strings.Contains(text, " = ") { // a calculation is no quotation
		quoted = false
		text = equation.ReplaceAllStringFunc(text, metricEquation)
	}
	return metricQuantities(text, quoted)
}

// american finds what may be a quantity in the units of the sources.
var american = regexp.MustCompile(`\blb\b|\bft\b|\bin\b|\bgal\b|°F|\boz\b|\bmph\b|\binch|\bpound|\btons?\b`)

// phrases are quantities that are written as words.
var phrases = [][2]string{
	{"the top inch", "the top 2.5 cm"},
	{"half a pound of nitrogen", "2.4 g/m² of nitrogen"},
	{"half a degree (°F)", "a quarter of a degree"},
}

const (
	figure = `\d[\d,]*(?:\.\d+)?`
	rateOf = ` ?(?:lb|tons?|gal)[^0-9()=;:.]{0,40}?(?:/| per )(?:1,?000 sq ft|acre)`
)

// equation finds a calculation with bare figures whose result has a unit:
// "2.40 × 0.75 = 1.80 lb N".
var equation = regexp.MustCompile(`(?:` + figure + `|\([^()=]*\))(?: ?[×÷−+/] ?(?:` + figure + `|\([^()=]*\)))+ = ` + figure + `(?:` + rateOf + `| (?:lb|tons?)/acre| lb(?: (?:soluble |quick )?(?:P₂O₅|K₂O|(?:N|S|Mg|P|K)\b))?)`)

// metricEquation converts a calculation. In a plain sum it converts every term, in a plain
// product the first; else only the result, followed by the calculation in the source's
// units in brackets.
func metricEquation(sum string) string {
	left, right, _ := strings.Cut(sum, " = ")
	result := metricQuantities(right, false)
	by := scaleOf(right)
	terms := strings.Fields(left)
	plain := by != 0 && !strings.ContainsAny(left, "()/")
	same, product := plain, plain
	for i, t := range terms {
		if i%2 == 1 {
			same = same && (t == "−" || t == "+")
			product = product && (t == "×" || t == "÷")
		}
	}
	switch {
	case same:
		for i := 0; i < len(terms); i += 2 {
			terms[i] = scaled(terms[i], by)
		}
	case product:
		terms[0] = scaled(terms[0], by)
	default:
		return result + " (" + strings.ReplaceAll(strings.ReplaceAll(left, "(", "["), ")", "]") + " = " + right + ")"
	}
	return strings.Join(terms, " ") + " = " + result
}

// quantity finds a figure, or two such as "1 to 2", with a unit.
var quantity = regexp.MustCompile(`(` + figure + `)(?:( to | and | or |-)(` + figure + `))? ?(lb|tons?|sq ft|ft|in|gal|fl oz|oz|°F|mph)\b?`)

// The units of the sources in metric ones.
const (
	gramsPerM2 = 4.88242763638 // of lb per 1000 sq ft [definitions]
	kgPerHa    = 1.12085116    // of lb per acre [definitions]
	tPerHa     = 2.24170231    // of tons per acre [definitions]
	kgPerL     = 0.11982643    // of lb per gal [definitions]
	kilograms  = 0.45359237    // of lb [definitions]
	meters2    = 0.09290304    // of sq ft [definitions]
	meters     = 0.3048        // of ft [definitions]
	liters     = 3.785411784   // of gal [definitions]
	milliliter = 29.5735296    // of fl oz [definitions]
	grams      = 28.349523125  // of oz [definitions]
	kmPerHour  = 1.609344      // of mph [definitions]
	lPerM2     = 0.040745833   // of gal per 1000 sq ft [definitions]
)

var (
	perThousand = regexp.MustCompile(`^([^0-9()=;:.,]{0,40}?)(/| per )1,?000 sq ft`)
	perAcre     = regexp.MustCompile(`^(/| per | an )acre`)
	perGallon   = regexp.MustCompile(`^(/| per | a )gal(lon)?\b`)
	nutrientOf  = regexp.MustCompile(`^( (?:soluble |quick |slow )?(?:P₂O₅|K₂O|(?:N|S|Mg|P|K)\b)| of (?:quick |slow |soluble )?(?:nitrogen|phosphate|potash|phosphorus|potassium|sulfur|magnesium|the element))`)
	ofSomething = regexp.MustCompile(`^ (?:of [a-zA-Z0-9]|a pack|packs?\b|bag|caught)`)
	afterInches = regexp.MustCompile(`^(?:$|[ ]?[,.;:)/]| (?:of|deep|wide|tall|is|falls|rises|falling|rising|over|and|or|from|each|in all|all|more|\()| \()`)
	inBrackets  = regexp.MustCompile(`^ \(([^()]*)\)`)
)

// metricQuantities converts every quantity outside brackets.
func metricQuantities(text string, quoted bool) string {
	var b strings.Builder
	depth, done := 0, 0
	for _, at := range quantity.FindAllStringSubmatchIndex(text, -1) {
		if at[0] < done {
			continue
		}
		depth += strings.Count(text[done:at[0]], "(") - strings.Count(text[done:at[0]], ")")
		b.WriteString(text[done:at[0]])
		done = at[0]
		before, _ := utf8.DecodeLastRuneInString(text[:at[0]])
		if depth > 0 || before == '-' || before == '.' {
			continue
		}
		low, join, high := text[at[2]:at[3]], "", ""
		if at[4] >= 0 {
			join, high = text[at[4]:at[5]], text[at[6]:at[7]]
		}
		made, end, ok := turned(low, join, high, text[at[8]:at[9]], text[at[9]:])
		if !ok {
			continue
		}
		end += at[9]
		own := text[at[0]:end]
		if g := inBrackets.FindStringSubmatchIndex(text[end:]); g != nil && metricSign.MatchString(text[end+g[2]:end+g[3]]) {
			made = text[end+g[2] : end+g[3]] // the text gives the metric value already
			end += g[1]
			b.WriteString(made + " (" + own + ")")
		} else if quoted {
			b.WriteString(made + " (" + own + ")")
		} else {
			b.WriteString(made)
		}
		done = end
	}
	b.WriteString(text[done:])
	return b.String()
}

// metricSign finds a figure, or two, in a metric unit.
var metricSign = regexp.MustCompile(`^` + figure + `(?: to ` + figure + `)? ?(?:°C|cm|mm|m|km/h|kg|g|L|mL|m²)\b?`)

// turned writes one quantity in metric units. rest is the text after the unit, and used is
// how many bytes of it were read as part of the unit.
func turned(low, join, high, unit, rest string) (made string, used int, ok bool) {
	write := func(scale float64, as string) string {
		made := scaled(low, scale)
		if high != "" {
			made += join + scaled(high, scale)
		}
		return made + " " + as
	}
	switch unit {
	case "lb":
		if g := perThousand.FindStringSubmatch(rest); g != nil {
			of := g[1]
			if strings.Contains(of, " of ") || g[2] == " per " && of != "" {
				return write(gramsPerM2, "g") + of + " per m²", len(g[0]), true
			}
			return write(gramsPerM2, "g") + of + "/m²", len(g[0]), true
		}
		if g := perAcre.FindString(rest); g != "" {
			return write(kgPerHa, "kg/ha"), len(g), true
		}
		if g := perGallon.FindString(rest); g != "" {
			return write(kgPerL, "kg/L"), len(g), true
		}
		if g := nutrientOf.FindString(rest); g != "" {
			if strings.HasPrefix(g, " of ") {
				return write(gramsPerM2, "g/m²") + g, len(g), true
			}
			return write(gramsPerM2, "g") + g + "/m²", len(g), true
		}
		if ofSomething.MatchString(rest) {
			return write(kilograms, "kg"), 0, true
		}
		return write(gramsPerM2, "g/m²"), 0, true
	case "ton", "tons":
		g := perAcre.FindString(rest)
		if g == "" {
			return "", 0, false
		}
		return write(tPerHa, "t/ha"), len(g), true
	case "gal":
		if g := perThousand.FindStringSubmatch(rest); g != nil && g[1] == "" {
			return write(100*lPerM2, "L per 100 m²"), len(g[0]), true
		}
		return write(liters, "L"), 0, true
	case "fl oz":
		return write(milliliter, "mL"), 0, true
	case "oz":
		return write(grams, "g"), 0, true
	case "sq ft":
		return write(meters2, "m²"), 0, true
	case "ft":
		return write(meters, "m"), 0, true
	case "mph":
		return write(kmPerHour, "km/h"), 0, true
	case "°F":
		made := celsius(low, rest)
		if high != "" {
			made += join + celsius(high, rest)
		}
		return made + " °C", 0, true
	case "in":
		if !afterInches.MatchString(rest) {
			return "", 0, false
		}
		if number(low) < 2 && number(high) < 2 {
			return write(25.4, "mm"), 0, true // [definitions]
		}
		return write(2.54, "cm"), 0, true // [definitions]
	}
	return "", 0, false
}

// celsius converts a temperature, or a difference of two.
func celsius(f, rest string) string {
	if strings.HasPrefix(rest, " away") || strings.HasPrefix(rest, " warmer") {
		return Figures(number(f)*5/9, 2) // [definitions]
	}
	return Number((number(f)-32)*5/9, 0) // [definitions]
}

func number(s string) float64 {
	v, _ := strconv.ParseFloat(strings.ReplaceAll(s, ",", ""), 64)
	return v
}

// scaled writes a figure in another unit: with three significant figures, or from inches
// in whole centimetres or millimetres.
func scaled(s string, by float64) string {
	v := number(s) * by
	if by == 2.54 || by == 25.4 { // [definitions]
		return Number(math.Round(v), 0)
	}
	return Figures(v, 3)
}

// scaleOf gives the factor that converts the bare figures of a calculation, by the unit of
// its result; 0 if there is none.
func scaleOf(result string) float64 {
	at := quantity.FindStringSubmatchIndex(result)
	if at == nil {
		return 0
	}
	switch unit, rest := result[at[8]:at[9]], result[at[9]:]; {
	case unit == "lb" && perAcre.MatchString(rest):
		return kgPerHa
	case unit == "lb" && ofSomething.MatchString(rest) && !perThousand.MatchString(rest) && !nutrientOf.MatchString(rest):
		return kilograms
	case unit == "lb":
		return gramsPerM2
	case slices.Contains([]string{"ton", "tons"}, unit):
		return tPerHa
	}
	return 0
}
