package figure

import (
	"strings"
	"testing"
)

// Each flag of the law bears on the answer, on both sides of a limit that stands
// in a statute; package law has the cases, this holds the flags to them.
func TestLawFlags(t *testing.T) {
	for line, want := range map[string]string{
		// Md. Code, Agric. § 8-803.5: open through 15 Nov and from 1 Mar; homeowners.
		"MD;--date=2026-11-15;--nitrogen=0.5;--soluble=0.4":                                  "yes",
		"MD;--date=2026-11-16;--nitrogen=0.5;--soluble=0.4":                                  "no",
		"MD;--date=2027-02-28;--nitrogen=0.5;--soluble=0.4":                                  "no",
		"MD;--date=2027-03-01;--nitrogen=0.5;--soluble=0.4":                                  "yes",
		"md;--date=2027-03-01;--nitrogen=0.5;--soluble=0.4":                                  "yes",
		"MD;--date=2026-11-20;--nitrogen=0.5;--soluble=0.4;--paid":                           "yes", // paid work there to the end of November
		"MD;--date=2026-12-01;--nitrogen=0.5;--soluble=0.4;--paid":                           "no",
		"MD;--date=2026-12-01;--potash=1":                                                    "yes", // potash is left open
		"NY;--date=2026-12-01;--potash=1":                                                    "no",  // there no fertilizer at all from 1 Dec
		"MD;--date=2026-05-01;--nitrogen=0.9;--soluble=0.7":                                  "yes", // § 6-224: 0.9 lb, 0.7 of it quick
		"MD;--date=2026-05-01;--nitrogen=0.91;--soluble=0.7":                                 "no",
		"MD;--date=2026-05-01;--nitrogen=0.9;--soluble=0.71":                                 "no",
		"MD;--date=2026-05-01;--nitrogen=0.9;--slow=0.23":                                    "yes",
		"MD;--date=2026-05-01;--nitrogen=0.9;--slow=0.21":                                    "no", // 0.711 lb quick
		"MD;--date=2026-05-01;--nitrogen=0.9;--slow=0.21;--soluble=0.7":                      "yes",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--water=15":                          "yes", // 15 ft from water, 10 with a drop spreader
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--water=14.9":                        "no",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--water=4.6 m":                       "yes",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--water=4.5 m":                       "no",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--water=10;--drop-spreader":          "yes",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--water=9;--drop-spreader":           "no",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=frozen":                     "no",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=open":                       "yes",
		"MD;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=dormant":                    "yes",
		"NH;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=Open, Dormant":              "no",  // N.H. RSA 431:4-e
		"MA;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=open":                       "yes", // Massachusetts: frozen, snow, saturated
		"MA;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=snow":                       "no",
		"MA;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=saturated":                  "no",
		"MA;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--ground=dormant":                    "yes",
		"MD;--date=2026-10-01;--nitrogen=0.8;--soluble=0.6;--year-n=0.7;--grass=fine fescue": "no", // 1.4 lb a year; tall fescue 2.7
		"MD;--date=2026-10-01;--nitrogen=0.8;--soluble=0.6;--year-n=0.6;--grass=Fine Fescue": "yes",
		"MD;--date=2026-10-01;--nitrogen=0.8;--soluble=0.6;--year-n=1.9;--grass=tall fescue": "yes",
		"MD;--date=2026-10-01;--nitrogen=0.8;--soluble=0.6;--year-n=2;--grass=tall fescue":   "no",
		// Phosphorus: Maryland asks for a report of three years that calls for it, a new lawn or a repair.
		"MD;--date=2026-05-01;--phosphate=0.5":                                "no",
		"MD;--date=2026-05-01;--phosphate=0.5;--turf=established":             "no",
		"MD;--date=2026-05-01;--phosphate=0.5;--turf=new":                     "yes",
		"MD;--date=2026-05-01;--phosphate=0.5;--turf=repair":                  "yes",
		"MN;--date=2026-05-01;--phosphate=0.5;--turf=new":                     "yes",
		"MN;--date=2026-05-01;--phosphate=0.5;--turf=repair":                  "no", // Minn. Stat. § 18C.60 knows no repair
		"MD;--date=2026-05-01;--phosphate=0.5;--report=low;--report-age=36":   "yes",
		"MD;--date=2026-05-01;--phosphate=0.5;--report=low;--report-age=37":   "no",
		"MD;--date=2026-05-01;--phosphate=0.5;--report=enough;--report-age=3": "no",
		"NY;--date=2026-05-01;--phosphate=0.2;--p2o5-percent=0.67":            "yes", // New York: up to 0.67 % needs no reason
		"NY;--date=2026-05-01;--phosphate=0.2;--p2o5-percent=0.68":            "no",
		// Pennsylvania and Michigan have an amount for natural sources.
		"PA;--date=2026-05-10;--phosphate=0.25;--p2o5-percent=46;--organic": "yes",
		"PA;--date=2026-05-10;--phosphate=0.3;--p2o5-percent=46;--organic":  "no",
		"PA;--date=2026-05-10;--phosphate=0.25;--p2o5-percent=46":           "ask",
		// Kinds of water, and a county's own dates.
		"MA;--date=2026-05-01;--nitrogen=0.5;--water=50;--water-kind=drinking-supply":    "no",
		"MA;--date=2026-05-01;--nitrogen=0.5;--water=50;--water-kind=other":              "yes",
		"ME;--date=2026-05-01;--nitrogen=0.5;--water=24;--water-kind=great-pond":         "no", // Maine: 25 ft from a great pond, and nothing else was found
		"ME;--date=2026-05-01;--nitrogen=0.5;--water=25;--water-kind=great-pond":         "ask",
		"ME;--date=2026-05-01;--nitrogen=0.5;--water=24;--water-kind=other":              "ask",
		"NH;--date=2026-05-01;--nitrogen=0.5;--slow=0.49;--water=100;--water-kind=large": "no", // half slow on protected shoreland
		"NH;--date=2026-05-01;--nitrogen=0.5;--slow=0.5;--water=100;--water-kind=large":  "yes",
		"NH;--date=2026-05-01;--nitrogen=0.5;--slow=0.49;--water=100;--water-kind=other": "yes",
		// A fifth slow, but not of a liquid; natural and enhanced sources have limits of
		// their own.
		"PA;--date=2026-05-10;--nitrogen=0.5;--slow=0.1":                                                            "no",
		"PA;--date=2026-05-10;--nitrogen=0.5;--slow=0.1;--liquid":                                                   "yes",
		"PA;--date=2026-05-10;--nitrogen=1;--slow=0.5":                                                              "no",
		"PA;--date=2026-05-10;--nitrogen=1;--slow=0.5;--enhanced":                                                   "ask",
		"DC;--date=2026-05-10;--phosphate=0.25;--p2o5-percent=5;--report=low;--report-age=2;--paid":                 "yes",
		"DC;--date=2026-05-10;--phosphate=0.25;--p2o5-percent=5;--report=low;--report-age=2;--paid;--year-p2o5=0.3": "no",
		// New Jersey asks paid work for a certificate.
		"NJ;--date=2026-11-20;--nitrogen=0.5;--slow=0.5;--paid":             "ask",
		"NJ;--date=2026-11-20;--nitrogen=0.5;--slow=0.5;--paid;--certified": "yes",
		"FL;--date=2026-06-01;--nitrogen=0.5;--county=SARASOTA":             "no",
		"FL;--date=2026-06-01;--nitrogen=0.5;--county=Sarasota County":      "no",
		"FL;--date=2026-06-01;--nitrogen=0.5;--county=Orange":               "ask",
	} {
		a, err := ask(t, "law;--state="+line)
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		if a.Text != "allowed: "+want || a.Values["allowed"] != want {
			t.Errorf("%s: %s, %v; want %s\n%s", line, a.Text, a.Values["allowed"], want, strings.Join(a.More, "\n"))
		}
	}
}

// A report that finds enough is not the same as none.
func TestReportOnPhosphorus(t *testing.T) {
	for line, says := range map[string]string{"": "Nothing that was given allows it.", ";--report=enough;--report-age=3": "The soil report does not call for phosphorus."} {
		a, err := ask(t, "law;--state=MD;--date=2026-05-01;--phosphate=0.5"+line)
		if err != nil || !strings.Contains(a.More[0], says) {
			t.Errorf("%q: %s, %v", line, a.More, err)
		}
	}
}
