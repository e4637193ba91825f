package main

import (
	"cmp"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"github.com/spf13/cobra"

	"firstdrop/store/sqlite"
)

// databaseName is the file in the data folder that holds the jobs.
const databaseName = "jobs.db"

// dataFlag is the value of --data: the folder of the jobs; "" for the user's own.
type dataFlag string

// addTo adds the flag to a command.
func (f *dataFlag) addTo(c *cobra.Command) {
	c.Flags().StringVar((*string)(f), "data", "", "")
	_ = c.MarkFlagDirname("data")
}

// folder returns the folder: that of the flag, or else where the system has
// programs keep what belongs to the user.
func (f *dataFlag) folder() (string, error) {
	if *f != "" {
		return string(*f), nil
	}
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" || runtime.GOOS == "ios" {
		folder, err := os.UserConfigDir()
		return filepath.Join(folder, "Firstdrop"), err
	}
	// XDG Base Directory Specification 0.8: data, not configuration.
	if folder := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(folder) {
		return filepath.Join(folder, "firstdrop"), nil
	}
	home, err := os.UserHomeDir()
	return filepath.Join(home, ".local", "share", "firstdrop"), err
}

// open opens the jobs of the folder, which is made where it is not there.
func (f *dataFlag) open(ctx context.Context, p *program) (*sqlite.Store, error) {
	folder, err := f.folder()
	if err == nil {
		err = os.MkdirAll(folder, 0o700)
	}
	if err != nil {
		return nil, fail(exitFile, "serve.no-jobs", "why", err.Error())
	}
	return openJobs(ctx, p, filepath.Join(folder, databaseName))
}

// openThere is as open, where jobs must be there already.
func (f *dataFlag) openThere(ctx context.Context, p *program) (*sqlite.Store, error) {
	folder, err := f.folder()
	if err != nil {
		return nil, fail(exitFile, "serve.no-jobs", "why", err.Error())
	}
	path := filepath.Join(folder, databaseName)
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return nil, fail(exitFile, "backup.none", "folder", folder)
	}
	return openJobs(ctx, p, path)
}

func openJobs(ctx context.Context, p *program, path string) (*sqlite.Store, error) {
	s, err := sqlite.Open(ctx, path)
	if err != nil && ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		return nil, fail(exitFile, "serve.no-jobs", "why", err.Error())
	}
	return s, nil
}

// closed closes the jobs after a command, and returns the command's own error
// first.
func closed(s *sqlite.Store, err error) error { return cmp.Or(err, s.Close()) }
