package word

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

func MaterialName(m material.Material) string {
	switch {
	case m.Name != "":
		return m.Name
	case m.Analysis != (agronomy.Analysis{}):
		return Analysis(m.Analysis)
	}
	return m.ID
}

// Analysis writes the three numbers on a bag: "18-24-12".
func Analysis(a agronomy.Analysis) string {
	return fmt.Sprintf("%s-%s-%s", Number(float64(a.N), 1), Number(float64(a.P2O5), 1), Number(float64(a.K2O), 1))
}

// Amount writes how much of a dose goes down on an area: "96 lb", "2.4 gal".
func (m Measure) Amount(d material.Dose, size agronomy.SquareFeet) string {
	a := d.For(size)
	if a.Volume > 0 {
		return m.Volume(a.Volume)
	}
	return m.Weight(a.Weight)
}

// InPacks writes " (2.4 packs)" to follow an amount; nothing for less than half a
// pack, as nobody measures that by the pack.
func InPacks(packs float64) string {
	if packs < 0.45 { // [common] rounds to under half
		return ""
	}
	return " (" + Packs(packs) + ")"
}

// Brings writes the nutrients in a dose: "0.5 lb N and 0.33 lb K₂O per 1,000 sq
// ft"; nothing for lime.
func (m Measure) Brings(d material.Dose) string {
	var all []string
	of := ""
	for _, n := range []struct {
		rate agronomy.PerThousand
		name string
	}{{d.N, "N"}, {d.P2O5, "P₂O₅"}, {d.K2O, "K₂O"}, {d.Mg, "Mg"}} {
		if n.rate >= 0.05 && d.Material.Kind != material.LimeMaterial { // [common] less is not worth a word
			amount, per, _ := strings.Cut(m.NutrientRate(n.rate, n.name), " per ")
			if m.Metric {
				amount, per = strings.TrimSuffix(m.NutrientRate(n.rate, n.name), "/m²"), "m²"
			}
			all, of = append(all, amount), " per "+per
		}
	}
	return List(all) + of
}

// Title writes what to do where and how much of it, in at most room
// characters: first the packs are left off, then the name of the place is cut,
// never the amount.
func Title(verb, place, amount, packs string, room int) string {
	if amount != "" {
		amount = ", " + amount
	}
	if whole := verb + " " + place + amount + packs; utf8.RuneCountInString(whole) <= room {
		return whole
	}
	return verb + " " + Cut(place, room-utf8.RuneCountInString(verb+" "+amount)) + amount
}

// Percent writes a part of one as "50 %".
func Percent(part float64) string { return Number(part*100, 0) + " %" }

// Cut shortens a text to at most room characters, after a whole word where that
// leaves most of it, and marks the cut.
func Cut(text string, room int) string {
	runes := []rune(text)
	if len(runes) <= room {
		return text
	}
	kept := string(runes[:max(room-1, 0)])
	if i := strings.LastIndexByte(kept, ' '); i > len(kept)/2 && runes[room-1] != ' ' {
		kept = kept[:i]
	}
	return strings.TrimRight(kept, " ,;:-") + "…"
}

// DoseWords writes "96 lb of pelletized limestone, 37 lb per 1,000 sq ft".
func (m Measure) DoseWords(d material.Dose, size agronomy.SquareFeet) string {
	a := d.For(size)
	amount, rate := m.Weight(a.Weight), m.Rate(d.Rate)
	if a.Volume > 0 {
		amount, rate = m.Volume(a.Volume), m.VolumeRate(d.Gallons)
	}
	return fmt.Sprintf("%s of %s, %s", amount, MaterialName(d.Material), rate)
}

// Capital begins a text with a capital letter, unless it begins with a symbol
// such as pH.
func Capital(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	if second, _ := utf8.DecodeRuneInString(text[n:]); !unicode.IsLower(first) || unicode.IsUpper(second) {
		return text
	}
	return string(unicode.ToUpper(first)) + text[n:]
}

// Inside gives a sentence a small first letter, as it has inside another sentence.
func Inside(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	if !unicode.IsUpper(first) {
		return text
	}
	return string(unicode.ToLower(first)) + text[n:]
}

// Sentence gives a text its full stop.
func Sentence(text string) string {
	if text == "" || strings.ContainsRune(".!?", rune(text[len(text)-1])) {
		return text
	}
	return text + "."
}

// Plural writes "1 job" or "3 jobs".
func Plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + one + "s"
}
