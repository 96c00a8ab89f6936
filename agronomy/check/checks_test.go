package check

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"reflect"
	"testing"
)

// A check is one published or derived answer: testdata/checks.json holds them
// with their source and how far the figure can be trusted.
type check struct {
	ID        string  `json:"id"`
	Method    string  `json:"method"`
	Inputs    inputs  `json:"inputs"`
	Expected  out     `json:"expected"`
	Tolerance float64 `json:"tolerance"`
	Source    string  `json:"source"`
	Mark      string  `json:"mark"` // seen, computed or memory
	Note      string  `json:"note"`
}

// inputs are a check's named inputs as JSON gives them.
type inputs map[string]any

// out is what a check's function answers, by the expected names: float64,
// string, bool, or []any.
type out map[string]any

// num gives a numeric input; a missing one stops the check.
func (in inputs) num(name string) float64 {
	v, ok := in[name].(float64)
	if !ok {
		panic(fmt.Sprintf("input %q is %v, not a number", name, in[name]))
	}
	return v
}

// numOr gives a numeric input, or other when it is absent.
func (in inputs) numOr(name string, other float64) float64 {
	if _, ok := in[name]; !ok {
		return other
	}
	return in.num(name)
}

// str gives a text input; a missing one stops the check.
func (in inputs) str(name string) string {
	v, ok := in[name].(string)
	if !ok {
		panic(fmt.Sprintf("input %q is %v, not a text", name, in[name]))
	}
	return v
}

// strOr gives a text input, or other when it is absent.
func (in inputs) strOr(name, other string) string {
	if _, ok := in[name]; !ok {
		return other
	}
	return in.str(name)
}

func loadChecks(t *testing.T) []check {
	t.Helper()
	data, err := os.ReadFile("testdata/checks.json")
	if err != nil {
		t.Fatal(err)
	}
	var cs []check
	if err := json.Unmarshal(data, &cs); err != nil {
		t.Fatal(err)
	}
	return cs
}

// checkFuncs finds the function behind each method of the checks.
func checkFuncs(t *testing.T) map[string]func(inputs) (out, error) {
	t.Helper()
	all := map[string]func(inputs) (out, error){}
	for _, part := range []map[string]func(inputs) (out, error){limeChecks, soilChecks, materialChecks} {
		for method, f := range part {
			if all[method] != nil {
				t.Errorf("method %s is registered twice", method)
			}
			all[method] = f
		}
	}
	return all
}

func TestChecks(t *testing.T) {
	checks := loadChecks(t)
	if len(checks) != 148 {
		t.Errorf("%d checks, want all 148", len(checks))
	}
	funcs := checkFuncs(t)
	used := map[string]bool{}
	for _, c := range checks {
		used[c.Method] = true
		t.Run(c.ID, func(t *testing.T) {
			f := funcs[c.Method]
			if f == nil {
				t.Fatalf("no function for method %s", c.Method)
			}
			got, err := f(c.Inputs)
			if err != nil {
				t.Fatalf("%s(%v): %v", c.Method, c.Inputs, err)
			}
			for name, want := range c.Expected {
				if !agrees(got[name], want, c.Tolerance) {
					t.Errorf("%s(%v): %s = %v, want %v ± %v [%s, %s]",
						c.Method, c.Inputs, name, got[name], want, c.Tolerance, c.Source, c.Mark)
				}
			}
		})
	}
	for method := range funcs {
		if !used[method] {
			t.Errorf("method %s is registered but no check asks for it", method)
		}
	}
}

// agrees compares numbers, and numbers inside lists, within the tolerance, and
// everything else exactly.
func agrees(got, want any, tolerance float64) bool {
	if w, ok := want.(float64); ok {
		g, ok := got.(float64)
		return ok && math.Abs(g-w) <= tolerance+1e-12
	}
	ws, ok := want.([]any)
	if !ok {
		return reflect.DeepEqual(got, want)
	}
	g := reflect.ValueOf(got)
	if !g.IsValid() || g.Kind() != reflect.Slice || g.Len() != len(ws) {
		return false
	}
	for i, w := range ws {
		if !agrees(g.Index(i).Interface(), w, tolerance) {
			return false
		}
	}
	return true
}
