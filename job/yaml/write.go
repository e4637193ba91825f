package yaml

import (
	"fmt"
	"io"
	"strings"

	v4 "go.yaml.in/yaml/v4"

	"firstdrop/job"
)

// Write prints a job for people. Reading it gives the same job.
func Write(w io.Writer, j *job.Job) error {
	err := dump(w, written(j.Node()), v4.WithIndent(2), v4.WithCompactSeqIndent(false))
	if err != nil {
		return fmt.Errorf("write the job as YAML: %w", err)
	}
	return nil
}

func dump(w io.Writer, own *v4.Node, options ...v4.Option) error {
	d, err := v4.NewDumper(w, append(options, v4.WithLineWidth(-1), v4.WithUnicode(true))...)
	if err != nil {
		return err
	}
	if err := d.Dump(own); err != nil {
		return err
	}
	return d.Close()
}

// written turns a node of a job document into one of the YAML writer.
func written(n *job.Node) *v4.Node {
	own := &v4.Node{Value: n.Value}
	switch n.Kind {
	case job.Keys:
		own.Kind = v4.MappingNode
	case job.List:
		own.Kind = v4.SequenceNode
	default:
		own.Kind, own.Tag = v4.ScalarNode, tags[n.Scalar]
		if strings.Contains(n.Value, "\n") {
			own.Style = v4.LiteralStyle
		}
	}
	if n.OneLine {
		own.Style |= v4.FlowStyle
	}
	for _, inner := range n.Items {
		own.Content = append(own.Content, written(inner))
	}
	return own
}

// tags keep a text that looks like a number in quotes.
var tags = map[job.ScalarKind]string{job.Text: "!!str", job.Number: "!!int", job.Truth: "!!bool", job.Null: "!!null"}
