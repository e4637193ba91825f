package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"

	"firstdrop/draw"
	"firstdrop/draw/design"
	"firstdrop/draw/png"
	"firstdrop/job/yaml"
	"firstdrop/plan"
	"firstdrop/sheet"
)

// set reads a job and plans it, for its sheets.
func set(file string) (*plan.Task, sheet.Set, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, sheet.Set{}, err
	}
	j, err := yaml.Read(file, data)
	if err != nil {
		return nil, sheet.Set{}, err
	}
	task, err := j.Task()
	if err != nil {
		return nil, sheet.Set{}, err
	}
	p, err := plan.Make(task)
	if err != nil {
		return nil, sheet.Set{}, err
	}
	s := sheet.Set{Job: j.Name, Plan: p, System: j.Units.System(), Jobs: 1000, Repeats: make([]*draw.Picture, len(task.Papers))}
	for i := range j.Papers {
		d, ok := design.Named(j.Papers[i].Picture)
		if !ok {
			continue
		}
		label := &task.Papers[i]
		if s.Repeats[i], err = d.Picture(label.Width, label.Repeat, 480); err != nil {
			return nil, sheet.Set{}, err
		}
	}
	return task, s, nil
}

// written returns all sheets of a set as PDF, and how many pages they have.
func written(s sheet.Set) (data []byte, pages int, err error) {
	d, err := s.Document(sheet.Kinds()...)
	if err != nil {
		return nil, 0, err
	}
	var b bytes.Buffer
	err = d.Write(&b)
	return b.Bytes(), len(d.Pages), err
}

// house is the examples that stand for the twelve rooms of a house.
const house = 12

// pages times all sheets, from the plan to the bytes of the PDF, against planning
// the same rooms in the same run, and weighs them: the sample room, and twelve rooms
// as one prints a house.
func pages() ([]Figure, error) {
	files, err := filepath.Glob("examples/*.yaml")
	if err != nil || len(files) < house {
		return nil, fmt.Errorf("%d examples here: run from the repository's root (%v)", len(files), err)
	}
	one, err := timedPages("sample room", []string{"examples/door-and-windows.yaml"})
	if err != nil {
		return nil, err
	}
	all, err := timedPages("house of 12 rooms", files[:house])
	if err != nil {
		return nil, err
	}
	pngs, err := timedPNG("examples/door-and-windows.yaml")
	return append(append(one, all...), pngs...), err
}

func timedPages(name string, files []string) ([]Figure, error) {
	var tasks []*plan.Task
	var sets []sheet.Set
	for _, file := range files {
		task, s, err := set(file)
		if err != nil {
			return nil, err
		}
		tasks, sets = append(tasks, task), append(sets, s)
	}
	planMS, err := medianOf(3, func() error {
		for _, task := range tasks {
			if _, err := plan.Make(task); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	size, count := 0, 0
	pagesMS, err := medianOf(3, func() error {
		size, count = 0, 0
		for _, s := range sets {
			data, n, err := written(s)
			if err != nil {
				return err
			}
			size += len(data)
			count += n
		}
		return nil
	})
	goal := 1024.0 * float64(len(files))
	return []Figure{
		{Name: "all sheets of " + name, Value: pagesMS, Unit: "ms"},
		{Name: "planning " + name, Value: planMS, Unit: "ms"},
		{Name: "all sheets ÷ planning, " + name, Value: pagesMS / planMS, Unit: "×", Goal: 30},
		{Name: "size of all sheets of " + name, Value: float64(size) / 1024, Unit: "KiB", Goal: goal},
		{Name: "pages of " + name, Value: float64(count)},
	}, err
}

// timedPNG times the pages of a hanging plan as pictures of 150 dpi.
func timedPNG(file string) ([]Figure, error) {
	_, s, err := set(file)
	if err != nil {
		return nil, err
	}
	book, err := s.Book(sheet.HangingSheet)
	if err != nil {
		return nil, err
	}
	scenes := book.Scenes()
	size := 0
	ms, err := medianOf(3, func() error {
		size = 0
		for _, scene := range scenes {
			var b bytes.Buffer
			if err := png.Write(&b, scene, 150); err != nil {
				return err
			}
			size += b.Len()
		}
		return nil
	})
	n := float64(len(scenes))
	return []Figure{
		{Name: "PNG of a hanging plan's page at 150 dpi", Value: ms / n, Unit: "ms"},
		{Name: "size of that PNG", Value: float64(size) / n / 1024, Unit: "KiB"},
	}, err
}
