package law_test

import (
	"fmt"
	"time"

	"swardbook/schedule/law"
)

func ExampleAsk() {
	a, err := law.Ask(law.Question{
		State: "MD", Date: law.MonthDay{Month: time.November, Day: 20},
		N: 0.8, SolubleN: 0.6, SlowShare: 0.25,
		WaterFeet: law.Unknown, ReportAgeMonths: law.Unknown,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("allowed:", a.Verdict)
	for _, f := range a.Deciding {
		fmt.Println(f.Text)
		fmt.Println(f.Rule.Source())
	}
	// Output:
	// allowed: no
	// Maryland: no products with nitrogen from 16 Nov to the end of February (homeowners). 20 Nov is closed.
	// Md. Code, Agric. § 8-803.5 (Maryland Department of Agriculture; in force 1 Oct 2013; as of Nov 2021; read; high confidence)
}

func ExampleFor() {
	st, rules, err := law.For("VT", "", law.Homeowner)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range rules.Closed(law.Potassium) {
		fmt.Println(st.Name, "closes potassium", c.Span)
	}
	d := rules.Setback(law.Nitrogen, law.Question{})
	fmt.Println("keep", d.Plain, "ft from water")
	// Output:
	// Vermont closes potassium 16 Oct to 31 Mar
	// keep 25 ft from water
}
