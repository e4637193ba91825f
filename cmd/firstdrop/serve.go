package main

import (
	"cmp"
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"net/url"
	"os/exec"
	"runtime"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"firstdrop/store/sqlite"
	"firstdrop/web"
	"firstdrop/web/ui"
)

// homeAddress is where the server listens unless it is told otherwise: for this
// machine alone.
const homeAddress = "127.0.0.1:8417"

// stopTime is how long a server that is being stopped waits for what it is doing.
const stopTime = 30 * time.Second

// serveFlags are the flags of `firstdrop serve`.
type serveFlags struct {
	data      dataFlag
	address   string
	hosts     []string
	cert, key string
	tokenFile string
	log       string
	open      bool
}

func (p *program) serveCommand() *cobra.Command {
	var f serveFlags
	c := p.command(cobra.Command{
		Use: "serve",
		Example: `  firstdrop serve
  firstdrop serve --data /srv/firstdrop --log json
  firstdrop serve --address :8443 --allow-host van.example --cert c.pem \
    --key k.pem`,
		Args: cobra.NoArgs,
	}, func(c *cobra.Command, _ []string) error {
		return p.serve(c.Context(), f)
	})
	f.data.addTo(c)
	c.Flags().StringVar(&f.address, "address", homeAddress, "")
	c.Flags().StringArrayVar(&f.hosts, "allow-host", nil, "")
	c.Flags().StringVar(&f.cert, "cert", "", "")
	c.Flags().StringVar(&f.key, "key", "", "")
	c.Flags().StringVar(&f.tokenFile, "token-file", "", "")
	c.Flags().StringVar(&f.log, "log", "text", "")
	c.Flags().BoolVar(&f.open, "open", false, "")
	return c
}

// serve serves until ctx is done.
func (p *program) serve(ctx context.Context, f serveFlags) error {
	logger, err := p.logger(f.log)
	if err != nil {
		return err
	}
	certificates, err := p.certificates(f)
	if err != nil {
		return err
	}
	s, err := f.data.open(ctx, p)
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", f.address)
	if err != nil {
		return closed(s, fail(exitUsage, "serve.no-listen", "address", f.address, "why", err.Error()))
	}
	h := &host{listener: listener, hosts: f.hosts, secure: certificates != nil}
	o := web.Options{
		Store: s, Files: ui.Files(), Log: logger, Version: p.programVersion(), Hosts: f.hosts, Reachable: h.isReachable(), Secure: h.secure,
	}
	if o.Reachable {
		if o.Token, err = p.token(f); err != nil {
			return closed(s, errors.Join(err, listener.Close()))
		}
	}
	if err := p.greet(s, h, o.Token, f.open); err != nil {
		return closed(s, errors.Join(err, listener.Close()))
	}
	server := web.New(o).HTTP()
	server.TLSConfig = certificates
	return closed(s, p.until(ctx, server, listener))
}

// until serves until ctx is done, and then finishes what has begun.
func (p *program) until(ctx context.Context, server *http.Server, listener net.Listener) error {
	ended := make(chan error, 1)
	go func() {
		if server.TLSConfig != nil {
			ended <- server.ServeTLS(listener, "", "")
			return
		}
		ended <- server.Serve(listener)
	}()
	select {
	case err := <-ended:
		return fail(exitInternal, "serve.ended", "why", err.Error())
	case <-ctx.Done():
	}
	stop, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
	defer cancel()
	if err := server.Shutdown(stop); err != nil {
		_ = server.Close() // what is left is not a save: those take less
	}
	return nil
}

// logger returns the log of that form on standard error.
func (p *program) logger(form string) (*slog.Logger, error) {
	switch form {
	case "text":
		return slog.New(slog.NewTextHandler(p.err, nil)), nil
	case "json":
		return slog.New(slog.NewJSONHandler(p.err, nil)), nil
	}
	return nil, fail(exitUsage, "serve.log")
}

// certificates reads what HTTPS needs; nil for HTTP.
func (p *program) certificates(f serveFlags) (*tls.Config, error) {
	switch {
	case f.cert == "" && f.key == "":
		return nil, nil
	case f.cert == "" || f.key == "":
		return nil, fail(exitUsage, "serve.cert-and-key")
	}
	pair, err := tls.LoadX509KeyPair(f.cert, f.key)
	if err != nil {
		return nil, fail(exitFile, "serve.cert", "why", err.Error())
	}
	return &tls.Config{Certificates: []tls.Certificate{pair}, MinVersion: tls.VersionTLS12}, nil
}

// greet says where the server is, and what one must know about that.
func (p *program) greet(s *sqlite.Store, h *host, token string, open bool) error {
	address := h.url("/")
	if token != "" {
		address = h.url("/api/enter") + "?token=" + url.QueryEscape(token)
	}
	lines := []string{p.lang.Text("serve.at", "address", address)}
	if token != "" {
		lines = append(lines, p.lang.Text("serve.reachable"))
		if !h.secure {
			lines = append(lines, p.lang.Text("serve.phones"))
		}
	}
	lines = append(lines, p.lang.Text("serve.stop", "file", s.Path()))
	if _, err := fmt.Fprintln(p.out, strings.Join(lines, "\n")); err != nil {
		return written(err)
	}
	if open {
		openInBrowser(address)
	}
	return nil
}

// openInBrowser asks the desktop to show an address. Where there is none, the
// address stands on the screen.
func openInBrowser(address string) {
	opener := map[string][]string{"windows": {"rundll32", "url.dll,FileProtocolHandler"}, "darwin": {"open"}}[runtime.GOOS]
	if opener == nil {
		opener = []string{"xdg-open"}
	}
	c := exec.Command(opener[0], append(opener[1:], address)...)
	if c.Start() == nil {
		go c.Wait() //nolint:errcheck // nothing depends on it
	}
}

// host is where the server listens.
type host struct {
	listener net.Listener
	hosts    []string
	secure   bool
}

func (h *host) at() *net.TCPAddr { return h.listener.Addr().(*net.TCPAddr) }

// isReachable reports whether others than this machine reach the server.
func (h *host) isReachable() bool { return !h.at().IP.IsLoopback() }

// url returns an address of the server for people: under a name that it has, or
// else an address of this machine.
func (h *host) url(path string) string {
	name := h.at().IP.String()
	if h.at().IP.IsUnspecified() {
		name = cmp.Or(firstOf(h.hosts), ownAddress(), "localhost")
	}
	u := url.URL{Scheme: "http", Host: net.JoinHostPort(name, fmt.Sprint(h.at().Port)), Path: path}
	if h.secure {
		u.Scheme = "https"
	}
	return u.String()
}

func firstOf(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return names[0]
}

// ownAddress returns an address under which others may reach this machine; "" for
// none.
func ownAddress() string {
	all, err := net.InterfaceAddrs()
	if err != nil {
		return ""
	}
	for _, a := range all {
		if n, ok := a.(*net.IPNet); ok && n.IP.To4() != nil && !n.IP.IsLoopback() {
			return n.IP.String()
		}
	}
	return ""
}
