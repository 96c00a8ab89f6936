package plan_test

import (
	"fmt"
	"io"
	"os"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// A site file becomes a program in three steps: read it, read the record book
// (here there is none), plan.
func Example() {
	text, err := os.ReadFile("../../examples/shore-lawn/site.toml")
	if err != nil {
		fmt.Println(err)
		return
	}
	site, problems := sitefile.Load("site.toml", text, func(name string) (io.ReadCloser, error) {
		return os.Open("../../examples/shore-lawn/" + name)
	})
	for _, p := range problems {
		fmt.Println(p)
	}
	if schedule.Fatal(problems) {
		return
	}
	program, err := plan.Program(site, nil, schedule.Date{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range program.Entries[:3] {
		fmt.Println(e.Date, e.Title)
		fmt.Println("   ", e.Because)
	}
	// Output:
	// 2026-08-23 Feed Front lawn, 11 lb
	//     Dose 1 of 2 this autumn; 2.2 lb N per 1,000 sq ft a year. This brings 0.73 lb N and 0.16 lb K₂O per 1,000 sq ft.
	// 2026-08-23 Potassium on Front lawn, 4.3 lb
	//     Potassium is medium in the soil report. This brings 0.51 lb K₂O per 1,000 sq ft.
	// 2026-09-22 Feed Front lawn, 12 lb
	//     Dose 2 of 2 this autumn; 2.2 lb N per 1,000 sq ft a year. This brings 0.8 lb N and 0.17 lb K₂O per 1,000 sq ft.
}
