package main

import (
	"bytes"
	"fmt"
	"os"

	"firstdrop/draw"
	"firstdrop/draw/design"
	"firstdrop/draw/png"
	"firstdrop/job/yaml"
	"firstdrop/plan"
	"firstdrop/sheet"
)

// setFrom reads a job from a file and plans it, for its sheets.
func setFrom(file string) (*plan.Task, sheet.Set, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, sheet.Set{}, err
	}
	return set(file, data)
}

// set plans a job for its sheets; file is what messages call it.
func set(file string, data []byte) (*plan.Task, sheet.Set, error) {
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

// sampleRoom is what a newcomer sees first.
const sampleRoom = "examples/door-and-windows.yaml"

// pages times all sheets, from the plan to the bytes of the PDF, against planning
// the same rooms in the same run, and weighs them: the sample room, and the twelve
// rooms of a house.
func pages() ([]Figure, error) {
	sample, err := os.ReadFile(sampleRoom)
	if err != nil {
		return nil, fmt.Errorf("run from the repository's root: %w", err)
	}
	one, err := timedPages("sample room", [][]byte{sample})
	if err != nil {
		return nil, err
	}
	var rooms [][]byte
	for i := range chambers {
		rooms = append(rooms, []byte(chambers[i].job()))
	}
	all, err := timedPages(fmt.Sprintf("house of %d rooms", len(rooms)), rooms)
	if err != nil {
		return nil, err
	}
	pngs, err := timedPNG(sampleRoom)
	return append(append(one, all...), pngs...), err
}

func timedPages(name string, jobs [][]byte) ([]Figure, error) {
	var tasks []*plan.Task
	var sets []sheet.Set
	for i, job := range jobs {
		task, s, err := set(fmt.Sprintf("%s, room %d", name, i+1), job)
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
	goal := 1024.0 * float64(len(jobs)) // KiB: a set is a room's
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
	_, s, err := setFrom(file)
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
