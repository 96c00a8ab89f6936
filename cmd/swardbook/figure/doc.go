// Package figure works out one figure by itself from what is given on the
// command line: how much lime, which rate, how many fills, whether the law
// allows it.
//
// It takes flags and arguments whose amounts carry their unit, US or metric
// ("2600 sq ft", "240 m2"). It gives an [Answer]: a sentence in both units,
// values for machines with the unit in each key, and the working with its
// sources. A flag that cannot be read, is missing or has no part in the answer
// is an error, and so is what lies outside the range of a published table.
//
// It leaves out the sums themselves, which are in the packages agronomy, climate
// and schedule/law; where an answer is written and in what form; sites and
// programs.
//
// [All] has every figure. Each stands in a file named after it, or after what
// it has in common with its neighbour:
//
//	f, err := figure.Find("lime")
//	fs := flag.New("figure lime")
//	work := f.Define(fs)
//	if err := flag.Parse(fs, []string{"--ph", "5.1", "--texture", "loam"}); err != nil {
//		return err
//	}
//	answer, err := work()
package figure
