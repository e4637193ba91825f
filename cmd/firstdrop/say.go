package main

import (
	"embed"
	"errors"
	"io/fs"
	"sync"

	"github.com/spf13/pflag"

	"firstdrop/job"
	"firstdrop/message"
	"firstdrop/words"
)

// What the program says besides what is said of a plan stands in files of its own,
// which a screen in the browser has no use for.
//
//go:embed catalogue/*.txt help/*.txt
var texts embed.FS

// speaking returns all that is said in a language; British English where there is
// no such language.
func speaking(tag string) *words.Catalogue { return spokenIn()[words.For(tag).Tag()] }

var spokenIn = sync.OnceValue(func() map[string]*words.Catalogue {
	all := map[string]*words.Catalogue{}
	for _, tag := range words.Languages() {
		c := words.For(tag)
		for _, part := range filesOf(tag) {
			more, err := c.With(textOf("catalogue/" + part + ".txt"))
			if err != nil {
				panic("catalogue/" + part + ".txt, " + err.Error())
			}
			c = more
		}
		all[tag] = c
	}
	return all
})

// filesOf names the files that a language is written in: American English is
// written as differences.
func filesOf(tag string) []string {
	if tag == "en-US" {
		return []string{"en-GB", "en-US"}
	}
	return []string{tag}
}

func textOf(name string) string {
	data, err := texts.ReadFile(name)
	if err != nil {
		panic(err) // it is embedded
	}
	return string(data)
}

// told says an error in a language as far as it can: what other packages say of
// their own stays as it is.
func told(c *words.Catalogue, err error) string {
	var f *failure
	var problems job.Problems
	switch {
	case err == nil:
		return ""
	case errors.As(err, &f) && error(f) == err:
		return f.told(c)
	case errors.As(err, &problems):
		return problems.In(c)
	case errors.Is(err, fs.ErrNotExist):
		return c.Text("file.not-there")
	case errors.Is(err, fs.ErrPermission):
		return c.Text("file.no-permission")
	}
	return toldFlag(c, err)
}

// toldFlag says what is wrong with a flag.
func toldFlag(c *words.Catalogue, err error) string {
	var unknown *pflag.NotExistError
	var lacks *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		return c.Text("flag.unknown", "flag", "-"+unknown.GetSpecifiedName())
	case errors.As(err, &unknown):
		return c.Text("flag.unknown", "flag", "--"+unknown.GetSpecifiedName())
	case errors.As(err, &lacks):
		return c.Text("flag.needs", "flag", "--"+lacks.GetFlag().Name)
	case errors.As(err, &invalid):
		return c.Text("flag.invalid", "flag", "--"+invalid.GetFlag().Name, "value", invalid.GetValue(), "why", told(c, invalid.Unwrap()))
	}
	return c.Say(message.Of(err))
}
