package law

// Local is a site's own stricter rules, from the ordinance of a town, a lake
// association or a deed. It can only tighten: it is added to the state's rules,
// and where several rules apply the strictest wins.
type Local struct {
	NoNitrogen, NoPhosphorus []Span  // closed days, both ends included
	MaxN                     float64 // lb per 1000 sq ft per application; 0: none
	Note                     string  // where the rule comes from
}

// Check returns an error if a span has an end that is no day of the year.
func (l Local) Check() error {
	for _, spans := range [2][]Span{l.NoNitrogen, l.NoPhosphorus} {
		for _, s := range spans {
			if err := s.Check(); err != nil {
				return err
			}
		}
	}
	return nil
}

// With returns the rules and, after them, those of l, which have no State. The set rs
// itself is not changed.
func (rs Rules) With(l Local) Rules {
	out := append(Rules(nil), rs...)
	citation := "local rule given in the site file"
	if l.Note != "" {
		citation += " (" + l.Note + ")"
	}
	add := func(id string, k Kind, s Span, value float64) {
		out = append(out, Rule{ID: id, Kind: k, When: s, Value: value,
			Citation: citation, Agency: "as the site file says", InForce: "not given",
			AsOf: "the site file", How: Seen, Confidence: HighConfidence})
	}
	for _, s := range l.NoNitrogen {
		add("local-no-nitrogen", NitrogenClosed, s, 0)
	}
	for _, s := range l.NoPhosphorus {
		add("local-no-phosphorus", PhosphorusClosed, s, 0)
	}
	if l.MaxN > 0 {
		add("local-max-n", NitrogenDose, Span{}, l.MaxN)
	}
	return out
}
