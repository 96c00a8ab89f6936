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
		return fmt.Sprintf("%s-%s-%s", Number(float64(m.Analysis.N), 1), Number(float64(m.Analysis.P2O5), 1), Number(float64(m.Analysis.K2O), 1))
	}
	return m.ID
}

// Amount writes a dose on an area: "96 lb (2.4 packs)".
func (m Measure) Amount(d material.Dose, size agronomy.SquareFeet) string {
	a := d.For(size)
	text := m.Weight(a.Weight)
	if a.Volume > 0 {
		text = m.Volume(a.Volume)
	}
	if a.Packs > 0 {
		text += " (" + Packs(a.Packs) + ")"
	}
	return text
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

// Inside gives a sentence the small letter that it has inside another.
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
