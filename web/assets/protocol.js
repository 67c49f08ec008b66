// Generated from the Go types by go run ./schema generate; do not edit.
export const VERSION = 1; // of the request and reply format
export const MAX_FILE_BYTES = 16777216; // the largest file that is read
export const MAX_STEPS = 101; // states of one quote that can be gone back to
