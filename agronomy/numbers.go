package agronomy

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Figure writes a number for a working: three significant digits, whole from
// 100 up, no trailing zeros.
func Figure[T ~float64](v T) string { return Figures(v, 3) }

// Whole writes a number without decimals.
func Whole[T ~float64](v T) string { return strconv.FormatFloat(float64(v), 'f', 0, 64) }

// Tenths writes a number with one decimal.
func Tenths[T ~float64](v T) string { return strconv.FormatFloat(float64(v), 'f', 1, 64) }

// Figures writes a number with n significant digits, but never less than its
// whole part, and without trailing zeros.
func Figures[T ~float64](v T, n int) string {
	x := float64(v)
	a := math.Abs(x)
	if a == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', n, 64)
	}
	decimals := n - 1
	for edge := 10.0; a >= edge && decimals > 0; edge *= 10 {
		decimals--
	}
	for edge := 1.0; a < edge && decimals < n+3; edge /= 10 {
		decimals++
	}
	var room [40]byte
	b := strconv.AppendFloat(room[:0], x, 'f', decimals, 64)
	if decimals > 0 {
		b = bytes.TrimRight(bytes.TrimRight(b, "0"), ".")
	}
	return string(b)
}

// Short writes a figure of a working with two decimals below 10, one below
// 100 and none above, without idle zeros.
func Short[T ~float64](x T) string {
	v, digits := float64(x), 100.0
	switch a := math.Abs(v); {
	case a >= 100:
		digits = 1
	case a >= 10:
		digits = 10
	}
	text := fmt.Sprint(math.Round(v*digits) / digits)
	if _, ok := any(x).(PH); ok && !strings.Contains(text, ".") {
		text += ".0" // as laboratories print a pH
	}
	return text
}

// Words writes a pH as laboratories do: one decimal, or two where it has them.
func (ph PH) Words() string { return Short(ph) }

// Fine is [Short] with one digit more below 10, for tons per acre in a sum.
func Fine(x float64) string {
	if math.Abs(x) < 10 {
		return fmt.Sprint(math.Round(x*1000) / 1000)
	}
	return Short(x)
}
