package quote_test

import (
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/quote"
)

// fill gives every field of a value something, every list an entry.
func fill(v reflect.Value, deep int) {
	switch {
	case !v.CanSet() || deep > 12:
	case v.Kind() == reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), deep+1)
	case v.Kind() == reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 4))
		fill(v.Index(0), deep+1)
	case v.Kind() == reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), deep+1)
		}
	}
}

// shared are the places at which two values hold the same memory.
func shared(path string, a, b reflect.Value, out *[]string) {
	if strings.HasPrefix(a.Type().PkgPath(),
		"boxwright/pricing/money") || strings.Contains(a.Type().PkgPath(), "decimal") {
		return // exact numbers never change in place
	}
	switch a.Kind() {
	case reflect.Pointer, reflect.Map, reflect.Slice:
		if a.IsNil() || b.IsNil() {
			if a.IsNil() != b.IsNil() {
				*out = append(*out, path+" is lost")
			}
			return
		}
		if a.UnsafePointer() == b.UnsafePointer() {
			*out = append(*out, path)
			return
		}
		if a.Kind() == reflect.Pointer {
			shared(path, a.Elem(), b.Elem(), out)
		}
		if a.Kind() == reflect.Slice {
			for i := range min(a.Len(), b.Len()) {
				shared(path+"[]", a.Index(i), b.Index(i), out)
			}
		}
	case reflect.Struct:
		for i := range a.NumField() {
			shared(path+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i), out)
		}
	}
}

// A clone shares no list and no pointer with its original, whatever field a
// draft is given next.
func TestCloneSharesNothing(t *testing.T) {
	var d quote.Draft
	fill(reflect.ValueOf(&d).Elem(), 0)
	require.NotEmpty(t, d.Readings)
	require.NotEmpty(t, d.More[0].Tickets)
	var same []string
	shared("Draft", reflect.ValueOf(d), reflect.ValueOf(*d.Clone()), &same)
	assert.Empty(t, same)
	before, err := d.Bytes()
	require.NoError(t, err)
	after, err := d.Clone().Bytes()
	require.NoError(t, err)
	assert.Equal(t, string(before), string(after), "and holds the same")
}
