package main

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// tokenName is the file in the data folder that holds the token.
const tokenName = "token"

// goodToken is what a token may be: nothing that a cookie or a link would need
// to escape, and too long to be guessed.
var goodToken = regexp.MustCompile(`^[A-Za-z0-9_-]{16,200}$`)

// token returns what others must send: what stands in the file, which is made
// where none is named.
func (p *program) token(f serveFlags) (string, error) {
	name := f.tokenFile
	if name == "" {
		folder, err := f.data.folder()
		if err != nil {
			return "", fail(exitFile, "serve.no-token", "why", err.Error())
		}
		name = filepath.Join(folder, tokenName)
	}
	data, err := os.ReadFile(name)
	if f.tokenFile == "" && errors.Is(err, fs.ErrNotExist) {
		data = []byte(rand.Text() + "\n") // 130 bits
		err = os.WriteFile(name, data, 0o600)
	}
	if err != nil {
		return "", fail(exitFile, "serve.no-token", "why", err.Error())
	}
	token := strings.TrimSpace(string(data))
	if !goodToken.MatchString(token) {
		return "", fail(exitFile, "serve.bad-token", "file", name)
	}
	return token, nil
}
