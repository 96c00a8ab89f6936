package main

import (
	"fmt"
	"log/slog"
	"net"
	"net/netip"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/feed"
)

var serveCommand = command{
	name: "serve", args: "[DIR]",
	what: "feed and pages for every site file in a folder",
	help: `    swardbook serve sites
    swardbook serve sites --base https://example.org/lawns --record
    swardbook serve --ask --base https://example.org/lawns

Serves every site file of the folder: for each a page to subscribe from, its
calendar, its sheet, and the program as JSON. A change of a file shows within a
second or two. While a file has errors, the last good program is served on, and
the pages and the log say so. A site with calendar.secret is found under that
word only, and is listed nowhere.

With --ask anybody may answer a few questions at /ask. The answers become an
address, and page and calendar are worked out from the address alone: nothing is
stored, and any number of servers say the same. DIR may then be left out.

It answers only this machine, at 127.0.0.1:8080, unless told otherwise. For the
internet, put a web server with a certificate in front of it, which passes
requests on, and give its address as --base.

        --addr HOST:PORT  where to answer (default 127.0.0.1:8080)
        --base URL        the public address, for links, to subscribe, QR codes
        --record          show a form that writes into the record books; whoever
                          can open a site's page can record in it
        --ask             ask anybody, and answer at addresses of their own
        --trust-proxy IP  of what is in front, also as 10.0.0.0/8, several with
                          commas: it is trusted to say where a request came from
        --state DIR       where calendars are kept between runs, so that changes
                          reach phones as changes (default: DIR/calendars)
        --quiet           no line for each request
        --no-color        no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		v := &serving{}
		fs.StringVar(&v.addr, "addr", "127.0.0.1:8080", "")
		fs.StringVar(&v.base, "base", "", "")
		fs.BoolVar(&v.record, "record", false, "")
		fs.BoolVar(&v.ask, "ask", false, "")
		fs.StringVar(&v.trust, "trust-proxy", "", "")
		fs.StringVar(&v.state, "state", "", "")
		fs.BoolVar(&v.quiet, "quiet", false, "")
		return func(s *session, args []string) error {
			if len(args) == 0 && v.ask {
				return s.serve("", v)
			}
			dir, err := one(args, "DIR")
			if err != nil {
				return err
			}
			return s.serve(dir, v)
		}
	},
}

// serving is what the flags of serve say.
type serving struct {
	addr, base, state, trust string
	record, ask, quiet       bool
}

func (s *session) serve(dir string, v *serving) error {
	log := slog.New(slog.NewTextHandler(s.stderr, nil))
	o := feed.Options{Plan: s.planner, Record: v.record, Ask: v.ask, Now: s.now, Log: log}
	if !v.quiet {
		o.Access = log
	}
	var err error
	if o.Base, err = baseFlag(v.base); err != nil {
		return err
	}
	if o.Trust, err = trusted(v.trust); err != nil {
		return err
	}
	if dir != "" {
		if o.Sites, err = os.OpenRoot(dir); err != nil {
			return fmt.Errorf("could not open %s: %w", dir, bare(err))
		}
		defer o.Sites.Close()
	}
	l, err := net.Listen("tcp", v.addr)
	if err != nil {
		return fmt.Errorf("could not listen: %w", err)
	}
	defer l.Close()
	here := l.Addr().(*net.TCPAddr)
	if o.Base == "" && !here.IP.IsUnspecified() {
		o.Base = "http://" + here.String()
	}
	if dir == "" {
		dir = "the questions"
	} else if o.State, err = stateFolder(dir, v.state); err != nil {
		if v.state != "" {
			return err
		}
		log.Warn("calendars cannot be kept; after a restart, changes made until then may not reach every phone", "error", err.Error())
	} else {
		defer o.State.Close()
	}
	f, err := feed.New(o)
	if err != nil {
		return err
	}
	// This block is never touched, so the system gives it no memory. But the collector
	// counts it, and lets the garbage of requests grow by as much before it runs: with a
	// few sites, which are a few MiB, it would otherwise run many times a second.
	room := make([]byte, 32<<20)
	defer runtime.KeepAlive(room)
	// With very many sites the collector runs more often the nearer all memory comes to
	// this figure; it is no hard limit.
	debug.SetMemoryLimit(256 << 20)
	go f.Watch(s.ctx)
	if o.Base == "" {
		s.say("serving %s at %s; without --base the pages cannot offer to subscribe", dir, here)
	} else {
		s.say("serving %s at %s, public address %s/", dir, here, o.Base)
	}
	if err := feed.Serve(s.ctx, l, f, log); err != nil {
		return err
	}
	if names := f.Faulty(); names != nil {
		return siteError(fmt.Errorf("swardbook has a fault that these sites show; the log above says where: %s", strings.Join(names, ", ")))
	}
	return nil
}

// trusted reads the addresses of proxies.
func trusted(given string) (out []netip.Prefix, err error) {
	for s := range strings.SplitSeq(given, ",") {
		if s = strings.TrimSpace(s); s == "" {
			continue
		}
		p, err := netip.ParsePrefix(s)
		if err != nil {
			var one netip.Addr
			if one, err = netip.ParseAddr(s); err != nil {
				return nil, misuse("--trust-proxy: %q is no address; write 127.0.0.1 or 10.0.0.0/8", s)
			}
			p = netip.PrefixFrom(one, one.BitLen())
		}
		out = append(out, p.Masked())
	}
	return out, nil
}

// stateFolder opens the folder in which calendars are kept, and makes it if
// it is not there.
func stateFolder(dir, given string) (*os.Root, error) {
	if given == "" {
		given = filepath.Join(dir, "calendars")
	}
	if err := os.MkdirAll(given, 0o777); err != nil {
		return nil, fmt.Errorf("could not make %s: %w", given, bare(err))
	}
	root, err := os.OpenRoot(given)
	if err != nil {
		return nil, fmt.Errorf("could not open %s: %w", given, bare(err))
	}
	return root, nil
}

func baseFlag(given string) (string, error) {
	if given == "" {
		return "", nil
	}
	base, err := feed.ParseBase(given)
	if err != nil {
		return "", misuse("--base: %s", err)
	}
	return base, nil
}
