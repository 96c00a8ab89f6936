package law

import "fmt"

// Phosphorus says whether phosphorus is open to an application as far as the
// soil report, the turf and the source go; dates and amounts are other rules.
// It reads Turf, Report, ReportAgeMonths, P2O5Percent, Organic and P2O5 (the
// last only for what an organic source may bring). ok is false where there is no
// such rule; that is no reason to spread phosphorus.
func (rs Rules) Phosphorus(q Question) (f Finding, ok bool) {
	for _, r := range rs {
		if r.Kind != PhosphorusReport || !r.Enforced() {
			continue
		}
		how, detail := r.door(q)
		f = Finding{Rule: r, Text: r.Statement() + " " + detail}
		switch how {
		case kept:
			f.Verdict = Yes
		case against:
			return Finding{r, No, f.Text}, true
		}
		ok = true
	}
	return f, ok
}

// door weighs a rule that forbids phosphorus unless an exception allows it.
func (r Rule) door(q Question) (stance, string) {
	switch lift := r.LiftedBy(q); {
	case q.P2O5Percent > 0 && q.P2O5Percent <= r.LowP2O5Percent:
		return kept, fmt.Sprintf("A product with %s phosphate does not count as phosphorus fertilizer.", percent(q.P2O5Percent/100))
	case lift.Has(NewLawn):
		return kept, "Allowed: this is a new lawn." + r.newFor()
	case lift.Has(RepairWork):
		return kept, "Allowed: this is a repair."
	case lift.Has(SoilTest):
		return r.byReport(q)
	case lift.Has(OrganicSource) && r.doubt == askIfOrganic:
		return doubtful, "Only some organic sources are exempt: ask which."
	case lift.Has(OrganicSource) && (r.OrganicMaxP2O5 == 0 || q.P2O5 <= r.OrganicMaxP2O5+slack):
		return kept, "Allowed: this is an organic source."
	}
	old, known := q.tooOld(r.ReportMonths)
	low := q.Report == Low
	switch {
	case r.doubt == askIfShut:
		return doubtful, "Sources disagree on what else allows it: ask."
	case low && r.doubt == askWithReport:
		return doubtful, "Whether a soil report allows it was not read: ask."
	case low && r.Unless.Has(SoilTest) && !known:
		return doubtful, "The age of the soil report was not given."
	case low && r.Unless.Has(SoilTest) && old:
		return against, fmt.Sprintf("The soil report is %d months old.", q.ReportAgeMonths)
	case q.Report == Enough:
		return against, "The soil report does not call for phosphorus."
	}
	return against, "Nothing that was given allows it."
}

// byReport weighs a young enough report that calls for phosphorus.
func (r Rule) byReport(q Question) (stance, string) {
	switch {
	case r.MaxP2O5Percent > 0 && q.P2O5Percent == 0:
		return doubtful, fmt.Sprintf("With a report, only products of %s phosphate or less are allowed, and the analysis was not given.", percent(r.MaxP2O5Percent/100))
	case r.MaxP2O5Percent > 0 && q.P2O5Percent > r.MaxP2O5Percent:
		return against, fmt.Sprintf("With a report, only products of %s phosphate or less are allowed; this one has %s.", percent(r.MaxP2O5Percent/100), percent(q.P2O5Percent/100))
	case q.ReportAgeMonths == Unknown:
		return kept, "Open: the soil report calls for it."
	}
	return kept, fmt.Sprintf("Allowed: the soil report calls for it and is %d months old.", q.ReportAgeMonths)
}

func (r Rule) newFor() string {
	switch r.NewSeasons {
	case 0:
		return ""
	case 1:
		return " It counts as new in its first growing season."
	}
	return fmt.Sprintf(" It counts as new for %d growing seasons.", r.NewSeasons)
}
