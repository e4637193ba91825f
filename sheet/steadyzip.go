package sheet

import (
	"archive/zip"
	"bytes"
	"cmp"
	"errors"
	"io"
	"slices"
)

// steadyZip copies a ZIP archive with its files in the order of their names, so
// that the same files give the same bytes. What a workbook begins with,
// [Content_Types].xml, sorts before letters.
func steadyZip(w io.Writer, archive []byte) error {
	r, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		return err
	}
	files := slices.Clone(r.File)
	slices.SortFunc(files, func(a, b *zip.File) int { return cmp.Compare(a.Name, b.Name) })
	out := zip.NewWriter(w)
	for _, f := range files {
		err = errors.Join(err, out.Copy(f))
	}
	return errors.Join(err, out.Close())
}
