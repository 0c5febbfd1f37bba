package tripfile

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"sumpter/app/tripfile/rows"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

var pragmaApplicationID = fmt.Sprintf("PRAGMA application_id = %d", applicationID)

// Read gives the trip as it stands in the file. Empty lists come back nil.
func (f *File) Read(ctx context.Context) (*trip.Trip, error) {
	f.mutex.Lock()
	defer f.mutex.Unlock()
	if f.conn == nil {
		return nil, fail(f.path, ErrClosed, prose.Text{})
	}
	stored, err := f.read(ctx)
	if err != nil {
		return nil, err
	}
	t, err := rows.Load(stored)
	if err != nil {
		return nil, &Error{Path: f.path, Kind: ErrDamaged, Detail: prose.Say("%s", err), Cause: err}
	}
	f.stored = stored
	return t, nil
}

// read gets the rows of all tables within one transaction.
func (f *File) read(ctx context.Context) (rows.Snapshot, error) {
	if _, err := f.conn.ExecContext(ctx, "BEGIN"); err != nil {
		return nil, explain(f.path, err)
	}
	defer rollBack(ctx, f.conn)
	tables := rows.Tables()
	stored := make(rows.Snapshot, len(tables))
	for i, table := range tables {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		list, err := f.readTable(table)
		if err != nil {
			return nil, damaged(f.path, err)
		}
		stored[i] = list
	}
	return stored, nil
}

// readTable runs without the caller's context: to interrupt a query costs a
// goroutine for each, and every table is small.
func (f *File) readTable(table rows.Table) ([]rows.Row, error) {
	found, err := f.conn.QueryContext(context.Background(), fmt.Sprintf("SELECT %s FROM %s ORDER BY %s",
		strings.Join(table.Columns, ", "), table.Name, strings.Join(table.Order, ", ")))
	if err != nil {
		return nil, err
	}
	defer found.Close()
	var list []rows.Row
	targets := make([]any, len(table.Columns))
	for found.Next() {
		row := make(rows.Row, len(table.Columns))
		for i := range row {
			targets[i] = &row[i]
		}
		if err := found.Scan(targets...); err != nil {
			return nil, err
		}
		list = append(list, row)
	}
	return list, found.Err()
}

// Save writes what differs between the trip and the file, in one transaction:
// all of it or, on any error, nothing. Any trip can be saved whose things have
// IDs of their own and refer to each other; it need not be fit for planning.
func (f *File) Save(ctx context.Context, t *trip.Trip) error {
	f.mutex.Lock()
	defer f.mutex.Unlock()
	switch {
	case f.conn == nil:
		return fail(f.path, ErrClosed, prose.Text{})
	case f.may == reading:
		return fail(f.path, ErrReadOnly, prose.Text{})
	}
	if f.stored == nil {
		stored, err := f.read(ctx)
		if err != nil {
			return err
		}
		f.stored = stored
	}
	changes, next, err := f.changes(t)
	if err != nil || len(changes) == 0 {
		return err
	}
	if err := f.checkSame(); err != nil {
		return err
	}
	err = inTransaction(ctx, f.path, f.conn, func() error { return f.apply(ctx, changes) })
	if err != nil {
		f.stored = nil // if the end was cut off, only the file knows
		return err
	}
	f.stored = next
	return f.look()
}

// write puts a trip into the file within the caller's transaction.
func (f *File) write(ctx context.Context, t *trip.Trip) error {
	changes, _, err := f.changes(t)
	if err != nil {
		return err
	}
	return f.apply(ctx, changes)
}

func (f *File) changes(t *trip.Trip) ([]rows.Change, rows.Snapshot, error) {
	next, err := rows.Dump(t)
	if err != nil {
		return nil, nil, &Error{Path: f.path, Kind: ErrUnsound, Detail: prose.Say("%s", err), Cause: err}
	}
	changes, err := rows.Changes(f.stored, next)
	if err != nil {
		return nil, nil, &Error{Path: f.path, Kind: ErrUnsound, Detail: prose.Say("%s", err), Cause: err}
	}
	return changes, next, nil
}

func (f *File) apply(ctx context.Context, changes []rows.Change) error {
	for _, change := range changes {
		if err := ctx.Err(); err != nil {
			return err
		}
		for _, step := range statements(change) {
			if err := f.run(step); err != nil {
				return err
			}
		}
	}
	return nil
}

// statement is one SQL text and the rows of values to run it with.
type statement struct {
	sql    string
	values [][]any
}

// statements gives how a change is written: what goes first makes room for
// what comes.
func statements(change rows.Change) []statement {
	table := change.Table
	keys := make([]string, table.Keys)
	for i, column := range table.Columns[:table.Keys] {
		keys[i] = column + " = ?"
	}
	where := strings.Join(keys, " AND ")
	deletion := statement{sql: fmt.Sprintf("DELETE FROM %s WHERE %s", table.Name, where)}
	for _, key := range change.Delete {
		deletion.values = append(deletion.values, key[:table.Keys])
	}
	var sets []string
	for _, column := range table.Columns[table.Keys:] {
		sets = append(sets, column+" = ?")
	}
	update := statement{sql: fmt.Sprintf("UPDATE %s SET %s WHERE %s", table.Name, strings.Join(sets, ", "), where)}
	for _, row := range change.Update {
		values := append([]any{}, row[table.Keys:]...)
		update.values = append(update.values, append(values, row[:table.Keys]...))
	}
	marks := strings.TrimSuffix(strings.Repeat("?, ", len(table.Columns)), ", ")
	insertion := statement{sql: fmt.Sprintf("INSERT INTO %s (%s) VALUES (%s)", table.Name, strings.Join(table.Columns, ", "), marks)}
	for _, row := range change.Insert {
		insertion.values = append(insertion.values, row)
	}
	return []statement{deletion, update, insertion}
}

func (f *File) run(step statement) error {
	if len(step.values) == 0 {
		return nil
	}
	prepared, err := f.conn.PrepareContext(context.Background(), step.sql)
	if err != nil {
		return err
	}
	defer prepared.Close()
	for _, values := range step.values {
		if _, err := prepared.ExecContext(context.Background(), values...); err != nil {
			return err
		}
	}
	return nil
}

// SaveCopy writes the file as it stands to a new file. A file that is already
// there is never touched: that is ErrExists.
func (f *File) SaveCopy(path string) error {
	f.mutex.Lock()
	defer f.mutex.Unlock()
	if f.conn == nil {
		return fail(f.path, ErrClosed, prose.Text{})
	}
	full, err := filepath.Abs(path)
	if err != nil {
		return explain(path, err)
	}
	return copyTo(context.Background(), full, f.conn)
}
