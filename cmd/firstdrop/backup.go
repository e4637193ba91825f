package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"

	"github.com/spf13/cobra"

	"firstdrop/store/sqlite"
)

func (p *program) backupCommand() *cobra.Command {
	var data dataFlag
	var replace bool
	c := p.command(cobra.Command{
		Use:     "backup FILE",
		Example: `  firstdrop backup jobs-2026-05-01.db`,
		Args:    oneFile,
	}, func(c *cobra.Command, args []string) error {
		s, err := data.openThere(c.Context(), p)
		if err != nil {
			return err
		}
		return closed(s, p.backup(c.Context(), s, args[0], replace))
	})
	data.addTo(c)
	c.Flags().BoolVar(&replace, "replace", false, "")
	return c
}

func (p *program) backup(ctx context.Context, s *sqlite.Store, path string, replace bool) error {
	switch err := s.Backup(ctx, path, replace); {
	case errors.Is(err, fs.ErrExist):
		return fail(exitFile, "backup.there", "file", path)
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		return fail(exitFile, "backup.failed", "why", err.Error())
	}
	all, err := s.List(ctx)
	if err != nil {
		return fail(exitFile, "backup.failed", "why", err.Error())
	}
	_, err = fmt.Fprintln(p.out, p.lang.Text("backup.done", "file", printable(path), "n", len(all)))
	return written(err)
}

func (p *program) restoreCommand() *cobra.Command {
	var data dataFlag
	c := p.command(cobra.Command{
		Use:     "restore FILE",
		Example: `  firstdrop restore jobs-2026-05-01.db`,
		Args:    oneFile,
	}, func(c *cobra.Command, args []string) error {
		s, err := data.open(c.Context(), p)
		if err != nil {
			return err
		}
		return closed(s, p.restore(c.Context(), s, args[0]))
	})
	data.addTo(c)
	return c
}

func (p *program) restore(ctx context.Context, s *sqlite.Store, path string) error {
	r, err := s.Restore(ctx, path, p.lang.Text("restore.label"))
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if err != nil {
		return fail(exitFile, "restore.failed", "why", err.Error())
	}
	_, err = fmt.Fprintln(p.out, p.lang.Text("restore.done", "file", printable(path),
		"added", p.lang.Text("restore.added", "n", r.Added),
		"changed", p.lang.Text("restore.changed", "n", r.Changed),
		"same", p.lang.Text("restore.same", "n", r.Same)))
	return written(err)
}

// oneFile asks for exactly one file.
func oneFile(c *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fail(exitUsage, "file.one", "command", c.CommandPath())
	}
	return nil
}
