package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"firstdrop/words"
)

// A folder is written so that nothing is lost and nothing is half done:
//
//  1. Look: a file that stands in the way is replaced only when the ledger says
//     that the program wrote it and its bytes are still the same, or when the
//     user says so. Otherwise nothing at all is written.
//  2. Write every file beside its place under another name. Until here the work
//     may be interrupted, and leaves no trace.
//  3. Rename them into place. Each file is either the old one or the new one at
//     every moment; while some are old and some new the ledger knows both.
//
// Names lead nowhere else: all work goes through an os.Root, and a symbolic link
// in the way is replaced, never followed.

// ledgerName is the file that lists what the program wrote, in the notation of
// sha256sum: a hash, two spaces, a name.
const ledgerName = "written.sha256"

// outFile is a file to write.
type outFile struct {
	name string
	data []byte
}

// saved tells what was done in a folder.
type saved struct {
	folder  string
	wrote   []string
	removed []string // of an earlier plan, no longer part of this one
	kept    []string // the same, but changed since
}

// notes says it to people.
func (s *saved) notes(c *words.Catalogue) []string {
	folder := strings.TrimRight(s.folder, "/") + "/"
	notes := []string{c.Text("folder.wrote", "n", len(s.wrote), "folder", folder, "files", strings.Join(gathered(c, s.wrote), ", "))}
	if len(s.removed) > 0 {
		notes = append(notes, c.Text("folder.removed", "files", strings.Join(s.removed, ", ")))
	}
	return append(notes, s.warnings(c)...)
}

// warnings are the notes that must be said even to those who want none.
func (s *saved) warnings(c *words.Catalogue) []string {
	if len(s.kept) == 0 {
		return nil
	}
	return []string{c.Text("folder.kept", "files", strings.Join(s.kept, ", "))}
}

// gathered puts the drawings of the walls into one word.
func gathered(c *words.Catalogue, names []string) []string {
	var out []string
	drawings := []string{".svg", ".dxf"}
	walls := make([]int, len(drawings))
	for _, n := range names {
		if i := slices.Index(drawings, filepath.Ext(n)); i >= 0 {
			walls[i]++
			continue
		}
		out = append(out, n)
	}
	for i, n := range walls {
		if n > 0 {
			out = append(out, c.Text("folder.walls", "n", n, "name", "wall-…"+drawings[i]))
		}
	}
	return out
}

// folder is a folder being written.
type folder struct {
	name   string
	root   *os.Root
	ledger map[string][]string // hashes of what the program wrote, by name
	// spares says which files of an earlier writing stay though they are not written
	// now; nil: none.
	spares func(name string) bool
}

// saveFolder writes the files into a folder, which it makes where there is none.
func saveFolder(ctx context.Context, name string, files []outFile, replace bool) (*saved, error) {
	return saveBeside(ctx, name, files, replace, nil)
}

// saveBeside is as saveFolder, but of an earlier writing lets those files stay that
// spares names.
func saveBeside(ctx context.Context, name string, files []outFile, replace bool, spares func(name string) bool) (*saved, error) {
	if err := os.MkdirAll(name, 0o777); err != nil {
		return nil, fileError("file.make-folder", name, err)
	}
	root, err := os.OpenRoot(name)
	if err != nil {
		return nil, fileError("file.open-folder", name, err)
	}
	defer root.Close()
	f := &folder{name: name, root: root, ledger: map[string][]string{}, spares: spares}
	if err := f.look(files, replace); err != nil {
		return nil, err
	}
	if err := f.stage(ctx, files); err != nil {
		return nil, err
	}
	return f.commit(files)
}

// saveAlone writes one file, whole or not at all, with the mode if one is given:
// it stands at path, and messages call it name.
func saveAlone(ctx context.Context, name, path string, data []byte, mode fs.FileMode) error {
	root, err := os.OpenRoot(filepath.Dir(path))
	if err != nil {
		return fileError("file.write", name, err)
	}
	defer root.Close()
	f, file := &folder{name: filepath.Dir(path), root: root}, outFile{filepath.Base(path), data}
	if err := f.stage(ctx, []outFile{file}); err != nil {
		return err
	}
	if mode != 0 {
		if err := root.Chmod(staged(file.name), mode); err != nil {
			f.discard([]outFile{file})
			return fileError("file.write", name, err)
		}
	}
	return f.settle(file)
}

// look reads the ledger and makes sure that nothing of anybody else's stands in
// the way.
func (f *folder) look(files []outFile, replace bool) error {
	data, err := f.root.ReadFile(ledgerName)
	sound := f.readLedger(string(data))
	var others []string
	if err == nil && !sound {
		others = append(others, ledgerName)
	}
	for _, file := range files {
		info, err := f.root.Lstat(file.name)
		switch {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil:
			return fileError("file.look-at", f.path(file.name), err)
		case info.IsDir():
			return fail(exitFile, "folder.in-the-way", "file", f.path(file.name))
		case !f.isOwn(file.name) && !f.holds(file):
			others = append(others, file.name)
		}
	}
	if len(others) == 0 || replace {
		return nil
	}
	return fail(exitFile, "folder.others", "folder", f.name, "files", strings.Join(others, ", "))
}

func (f *folder) path(name string) string { return strings.TrimRight(f.name, "/") + "/" + name }

// readLedger reads the ledger, and reports whether all of it could be read.
func (f *folder) readLedger(text string) bool {
	for line := range strings.Lines(text) {
		hash, name, ok := strings.Cut(strings.TrimRight(line, "\r\n"), "  ")
		if !ok || len(hash) != 2*sha256.Size || name == "" {
			return false
		}
		f.ledger[name] = append(f.ledger[name], hash)
	}
	return true
}

// isOwn reports whether the program wrote the file as it stands.
func (f *folder) isOwn(name string) bool {
	info, err := f.root.Lstat(name)
	if err != nil || !info.Mode().IsRegular() || f.ledger[name] == nil {
		return false
	}
	data, err := f.root.ReadFile(name)
	return err == nil && slices.Contains(f.ledger[name], hashOf(data))
}

// holds reports whether the file stands there already, byte for byte.
func (f *folder) holds(file outFile) bool {
	info, err := f.root.Lstat(file.name)
	if err != nil || !info.Mode().IsRegular() || info.Size() != int64(len(file.data)) {
		return false
	}
	data, err := f.root.ReadFile(file.name)
	return err == nil && string(data) == string(file.data)
}

func hashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// staged is the name of a file before it is renamed into place.
func staged(name string) string { return fmt.Sprintf(".%s.%d.part", name, os.Getpid()) }

// stage writes all files beside their places; after an error none is left.
func (f *folder) stage(ctx context.Context, files []outFile) (err error) {
	defer func() {
		if err != nil {
			f.discard(files)
		}
	}()
	for _, file := range files {
		if ctx.Err() != nil {
			return context.Canceled
		}
		if err := f.writeStaged(file); err != nil {
			return fileError("file.write", f.path(file.name), err)
		}
	}
	return nil
}

func (f *folder) writeStaged(file outFile) error {
	out, err := f.root.OpenFile(staged(file.name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = out.Write(file.data)
	return errors.Join(err, out.Sync(), out.Close())
}

// settle renames a staged file into place.
func (f *folder) settle(file outFile) error {
	if err := f.root.Rename(staged(file.name), file.name); err != nil {
		return fileError("file.write", f.path(file.name), err)
	}
	return nil
}

// discard removes what is staged and not settled.
func (f *folder) discard(files []outFile) {
	for _, file := range files {
		_ = f.root.Remove(staged(file.name))
	}
}

// commit renames the files into place and brings the ledger up to date.
func (f *folder) commit(files []outFile) (*saved, error) {
	s := &saved{folder: f.name}
	old := f.leftovers(files)
	for _, file := range files {
		f.ledger[file.name] = append(f.ledger[file.name], hashOf(file.data))
	}
	if err := f.writeLedger(); err != nil {
		f.discard(files)
		return nil, err
	}
	for _, file := range files {
		if err := f.settle(file); err != nil {
			f.discard(files)
			return nil, err
		}
		f.ledger[file.name] = []string{hashOf(file.data)}
		s.wrote = append(s.wrote, file.name)
	}
	for _, name := range old {
		if f.isOwn(name) && f.root.Remove(name) == nil {
			s.removed = append(s.removed, name)
		} else {
			s.kept = append(s.kept, name)
		}
		delete(f.ledger, name)
	}
	return s, f.writeLedger()
}

// leftovers returns the files of the ledger that still stand there and are no
// longer written. A sheet of an earlier plan must not be cut from.
func (f *folder) leftovers(files []outFile) []string {
	var names []string
	for name := range f.ledger {
		isWritten := slices.ContainsFunc(files, func(o outFile) bool { return o.name == name })
		if f.spares != nil && f.spares(name) {
			continue
		}
		if _, err := f.root.Lstat(name); !isWritten && err == nil {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// writeLedger writes the ledger and renames it into place.
func (f *folder) writeLedger() error {
	var lines []string
	for name, hashes := range f.ledger {
		for _, h := range hashes {
			lines = append(lines, h+"  "+name+"\n")
		}
	}
	slices.SortFunc(lines, func(a, b string) int {
		return strings.Compare(a[2*sha256.Size:]+a, b[2*sha256.Size:]+b)
	})
	lines = slices.Compact(lines)
	_ = f.root.Remove(staged(ledgerName))
	err := f.writeStaged(outFile{ledgerName, []byte(strings.Join(lines, ""))})
	if err == nil {
		err = f.root.Rename(staged(ledgerName), ledgerName)
	}
	if err != nil {
		return fileError("file.write", f.path(ledgerName), err)
	}
	return nil
}
