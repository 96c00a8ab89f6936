package page

import (
	"fmt"
	"html/template"
	"strconv"
	"strings"

	"rsc.io/qr"
)

// Code is a QR code as the path of a drawing, one unit a module.
type Code struct {
	Side int // with the quiet zone
	Path string
}

const quiet = 4 // modules of white around a QR code // [common] ISO/IEC 18004

// Drawn is the path as the attribute of a drawing.
func (c *Code) Drawn() template.HTMLAttr { return template.HTMLAttr(`d="` + c.Path + `"`) }

// NewCode makes the QR code of a text.
func NewCode(text string) (*Code, error) {
	q, err := qr.Encode(text, qr.M)
	if err != nil {
		return nil, fmt.Errorf("the address %q does not fit a QR code: %w", text, err)
	}
	var b strings.Builder
	for y := range q.Size {
		for x := 0; x < q.Size; x++ {
			from := x
			for q.Black(x, y) {
				x++
			}
			if x > from {
				wide := strconv.Itoa(x - from)
				b.WriteString("M" + strconv.Itoa(quiet+from) + " " + strconv.Itoa(quiet+y) + "h" + wide + "v1h-" + wide + "z")
			}
		}
	}
	return &Code{q.Size + 2*quiet, b.String()}, nil
}
