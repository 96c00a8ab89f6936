// Package law answers what state law says about fertilizer on a lawn: closed
// dates, when phosphorus is open, doses and yearly amounts, slow nitrogen,
// distance from water, the state of the ground, rain and paving; by state,
// county and who spreads.
//
// It is a planner's table and no legal advice. Every Rule carries the citation,
// the agency, the date of the text that was read, how it was read and how sure
// the row is. The rows are in table_*.go, one file per stretch of states; the
// table was compiled in 2026 from copies of statutes, rules, agency and
// extension pages.
//
// There are two ways in:
//
//   - [Ask] takes one application on one day and answers Yes, No or MustAsk,
//     with the findings that decide and the conditions to keep on the day.
//   - [For] gives a state and the rules that bind one kind of user in a county.
//     Its methods Closed, NCap, SolubleCap, AnnualNCap, PCap, PAnnualCap,
//     SlowShareMin, Phosphorus, Setback, Ground, Rain and Impervious give a
//     planner the limits to size and date jobs by.
//
// # Reading the table
//
// A rule is enforced when it binds use or label, is of high or medium
// confidence (or says Keep), and has no Scope, or a Scope the question itself
// decides (Only, Waters). A county's own rule binds in that county alone; a town's
// or a basin's in the asker's county is asked for, as the county does not tell
// whether the lawn lies in it. What is not enforced is still shown: a rule of low
// confidence that speaks against an application turns Yes into MustAsk; a rule
// about one region is a condition that says where it applies, and is dropped
// where the county is known to have no share in it; advice and rules for the
// shop are conditions. Among enforced rules the strictest wins. An exception is
// only what a row lists.
//
// Closed spans name the first and the last closed day, both included. February
// 29 as the last day means the end of February, in every year. Amounts are lb
// per 1000 sq ft, distances ft, as the laws print them; sentences add metric.
// Phosphorus amounts are P2O5 throughout, also where a law writes phosphorus:
// the smaller reading.
//
// Where nothing was found the answer is MustAsk, never Yes. [Local] adds a
// site's own stricter rules and can only tighten.
//
// The package is pure: no clock, no files, nothing imported but the standard
// library.
package law
