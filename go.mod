module swardbook

go 1.26.8

toolchain go1.26.10

require (
	github.com/BurntSushi/toml v1.6.0
	github.com/arran4/golang-ical v0.3.4
	github.com/rogpeppe/go-internal v1.16.0
	github.com/spf13/pflag v1.1.0
	rsc.io/qr v0.2.0
)

require (
	golang.org/x/sys v0.26.0 // indirect
	golang.org/x/tools v0.26.0 // indirect
)
