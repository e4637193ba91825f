package web

import (
	"crypto/subtle"
	"net"
	"net/http"
	"net/netip"
	"slices"
	"strings"
)

// policy is what a page of ours may load: nothing from elsewhere, and no script
// but our own. WebAssembly is compiled, nothing else is made into code.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; " +
	"connect-src 'self'; worker-src 'self'; manifest-src 'self'; font-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// inertPolicy is for drawings and pictures: opened by themselves they do nothing.
const inertPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox"

// withHeaders tells browsers what answers may be used for.
func withHeaders(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=(), payment=(), usb=()")
		if strings.HasPrefix(r.URL.Path, "/api/") {
			h.Set("Cache-Control", "no-store")
		}
		next.ServeHTTP(w, r)
	})
}

// guarded lets through what comes from this server's own pages and from programs.
//
//   - The Host must be one of ours. A page elsewhere can have its own name lead to
//     this machine, and would then count as ours.
//   - Nothing is changed, and nothing of /api is asked, at the bidding of a page
//     elsewhere.
//   - Where others reach the server, /api asks for the token.
func (s *Server) guarded(next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		isAPI := strings.HasPrefix(r.URL.Path, "/api/") && r.URL.Path != "/api/enter"
		switch {
		case !s.answersTo(r.Host):
			refuse(w, http.StatusMisdirectedRequest, "wrong_host", "this server is not called that; start it with --allow-host to have it answer to another name")
		case origin.Check(r) != nil, isAPI && isElsewhere(r.Header.Get("Sec-Fetch-Site")):
			refuse(w, http.StatusForbidden, "cross_origin", "the request comes from a page of another server")
		case isAPI && s.Token != "" && !s.isAllowed(r):
			w.Header().Set("WWW-Authenticate", "Bearer")
			refuse(w, http.StatusUnauthorized, "no_token", "open the link that the server has printed, or send its token as Authorization: Bearer")
		default:
			next.ServeHTTP(w, r)
		}
	})
}

// isElsewhere reports whether a browser says that another server's page asks.
func isElsewhere(site string) bool { return site != "" && site != "same-origin" && site != "none" }

// answersTo reports whether the server is called by that name, with or without a
// port.
func (s *Server) answersTo(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = strings.TrimSuffix(strings.TrimPrefix(host, "["), "]")
	}
	name = strings.ToLower(strings.TrimSuffix(name, "."))
	if ip, err := netip.ParseAddr(name); err == nil {
		return s.Reachable || ip.IsLoopback()
	}
	return name == "localhost" || slices.ContainsFunc(s.Hosts, func(h string) bool { return strings.EqualFold(h, name) })
}

// cookieName is the cookie that holds the token.
const cookieName = "firstdrop_token"

// isAllowed reports whether a request carries the token.
func (s *Server) isAllowed(r *http.Request) bool {
	if token, ok := strings.CutPrefix(r.Header.Get("Authorization"), "Bearer "); ok {
		return s.isToken(token)
	}
	c, err := r.Cookie(cookieName)
	return err == nil && s.isToken(c.Value)
}

func (s *Server) isToken(text string) bool {
	return subtle.ConstantTimeCompare([]byte(text), []byte(s.Token)) == 1
}

// enter takes the token of the link that the server has printed, and keeps it as
// a cookie.
func (s *Server) enter(w http.ResponseWriter, r *http.Request) {
	if token := r.URL.Query().Get("token"); s.Token != "" {
		if !s.isToken(token) {
			refuse(w, http.StatusUnauthorized, "no_token", "this is not the server's token; open the link that it has printed")
			return
		}
		http.SetCookie(w, &http.Cookie{
			Name: cookieName, Value: token, Path: "/api", MaxAge: 400 * 24 * 60 * 60,
			HttpOnly: true, Secure: s.Secure, SameSite: http.SameSiteLaxMode,
		})
	}
	http.Redirect(w, r, "/", http.StatusSeeOther)
}
