package page

import (
	"fmt"
	"strings"
	"testing"

	"rsc.io/qr"
)

// The drawing is the code, module by module.
func TestCodeDrawsEveryModule(t *testing.T) {
	const text = "https://example.org/lawns/mill/"
	c, err := NewCode(text)
	if err != nil {
		t.Fatal(err)
	}
	q, err := qr.Encode(text, qr.M)
	if err != nil {
		t.Fatal(err)
	}
	dark := map[[2]int]bool{}
	for run := range strings.SplitSeq(strings.TrimPrefix(c.Path, "M"), "M") {
		var x, y, n, back int
		if _, err := fmt.Sscanf(run, "%d %dh%dv1h-%dz", &x, &y, &n, &back); err != nil || n != back || n < 1 {
			t.Fatalf("run %q: %v", run, err)
		}
		for i := range n {
			dark[[2]int{x + i, y}] = true
		}
	}
	if c.Side != q.Size+8 {
		t.Errorf("side %d for %d modules", c.Side, q.Size)
	}
	for y := range c.Side {
		for x := range c.Side {
			if dark[[2]int{x, y}] != q.Black(x-4, y-4) {
				t.Fatalf("module %d, %d is wrong", x, y)
			}
		}
	}
	if _, err := NewCode(strings.Repeat("x", 5000)); err == nil {
		t.Error("5000 characters fit a code")
	}
}
