// Package feed puts the programs of a folder of site files on the web: for each
// site a landing page to subscribe from, the calendar as a whole and for every
// person and area, the sheet, and the program as JSON.
//
// [New] gives an [net/http.Handler] that makes them when they are asked for and
// follows the folder ([Feed.Watch]); [Serve] runs it with limits and a graceful
// stop. [Publish] writes the same tree as plain files.
//
// # The tree
//
//	/                      the sites that are not private
//	/NAME/                 landing page of NAME.toml
//	/NAME/program.ics      the calendar
//	/NAME/program.html     the sheet
//	/NAME/program.json     the program
//	/NAME/person/ID.ics    one person's calendar
//	/NAME/area/ID.ics      one area's calendar
//	/NAME/done             the form on which a job is recorded, if that is allowed
//
// A site with calendar.secret stands under /SECRET/ instead of /NAME/, and
// nowhere else: it is not listed and not named in the log.
//
// # The way through
//
//	read       a site file, its record book and its normals become a program
//	turn       bounds the time of one site's planning; a panic there ends nothing else
//	tree       a program becomes the files of its site
//	leaver     ends the calendar of a person or an area that has left the site
//	resource   a file becomes the bytes and headers of an answer
//	answer     conditional requests, after RFC 9110
//	feed       requests find their site
//	site       what is known of one site, and what is made of it
//	watch      sites come, change and go
//	state      which calendars are kept, and which files are kept ready
//	serve      limits of time, size and connections
//	form       asks what was done; record writes it into the record book
//	link       addresses that carry a site; link_make works them out, client bounds who asks
//	ask        the questions, which make such an address
//	local      the questions for one person, whose answers are written to a site file
//	publish    the tree as files; imprint tells the sites in which nothing changed
//
// A file that breaks does not take its site down: the last good program is
// served on, and the landing page, the sheet and the log say so.
//
// The package opens files only inside the folders it is given, reads the clock
// only through the function it is given, and keeps no state but the calendars:
// SEQUENCE and LAST-MODIFIED of an event can only grow if the calendar that was
// served before is known.
package feed
