/** Sentences about the library of circuits, and about what a page asks of its host. */
export const LIBRARY_WORDS: Readonly<Record<string, string>> = {
  "store-locked": "The library is open in another Wirefathom. Close that one, then try again.",
  "store-read-only": "The library in {folder} may not be written. Allow it, then try again.",
  "store-unwritable": "The library in {folder} cannot be read or written: the disk reports a fault.",
  "store-no-folder": "There is no place for the library: {folder} cannot be made.",
  "store-full":
    "The disk is full, so the last change was not kept. Make room: what is on the bench is kept by itself then.",
  "store-damaged": "The library was found damaged. Start Wirefathom again: it then goes back to its newest good copy.",
  "store-closed": "Wirefathom is ending; nothing more is kept.",
  "store-newer": "The library was written by a newer Wirefathom ({newest}). Start that one; this one changes nothing.",
  "store-no-copy": "The copy of the library for today could not be made. The library itself is in order.",
  "store-put-back":
    "The folder of the library was taken away while Wirefathom ran. All of it was written anew: {folder}.",
  "store-server-gone":
    "The shared library {library} does not answer. It is asked again; what you change here waits until it does.",
  "store-server-denied": "The shared library {library} lets nobody in with this user name and password.",
  "store-server-database":
    "There is no database for the shared library {library}; whoever looks after the server makes it.",
  "store-server-rights": "This user name may not read and write the shared library {library}.",
  "store-server-full": "The server of the shared library {library} has no room left; what you change here waits.",
  "store-server-read-only": "The shared library {library} may only be read at present; what you change here waits.",
  "store-server-busy": "The shared library {library} is busy. It is asked again; what you change here waits.",
  "store-server-fault": "The server of the shared library {library} reports a fault of its own disk or program.",
  "store-server-certificate":
    "The server of the shared library {library} cannot prove who it is. Name its certificate with sslrootcert, or say sslmode=require.",
  "store-server-no-tls":
    "The server of the shared library {library} does not seal its line. Switch that on there, or say sslmode=disable on a wire of your own.",
  "library-address": "The library to open must be a connection string: postgres://USER@HOST/DATABASE.",
  "library-address-form":
    "The connection string of the library cannot be read: postgres://USER@HOST:PORT/DATABASE is its form.",
  "library-address-option": "The connection string of the library says {option}; what may be said is {known}.",
  "library-address-host": "The connection string of the library names no server: postgres://USER@HOST/DATABASE.",
  "library-address-database": "The connection string of the library names no database: postgres://USER@HOST/DATABASE.",
  "library-address-user": "The connection string of the library names no user: postgres://USER@HOST/DATABASE.",
  "library-address-sslmode": "The connection string of the library says an sslmode that is none of {modes}.",
  "library-address-certificate": "The certificate {file} that the connection string names cannot be read.",
  "library-address-password":
    "A password in a command can be read by others on this machine. Put the connection string into WIREFATHOM_LIBRARY, or the password into PGPASSWORD or the file that PGPASSFILE names.",
  "library-address-open-file":
    "Others on this machine can read {file}, which may hold a password. Let only yourself read it, then start again.",
  "circuit-unknown": "This circuit is no longer in the library.",
  "circuit-changed-elsewhere": "This circuit was changed in another window; open it again, or keep yours as a copy.",
  "bench-changed-elsewhere":
    "Its condition, ticks or faults were changed in another window; open it again, or keep yours as a copy.",
  "version-unknown": "This circuit has no version {version}.",
  "version-damaged": "Version {version} of {title} is damaged on the disk.",
  "versions-damaged": "No version of this circuit can be read any more.",
  "job-unknown": "This job is no longer in the library.",
  "job-damaged": "This job is damaged on the disk.",
  "attempt-unknown": "This exercise is no longer in the library; open its file again.",
  "attempt-damaged": "What was done on this exercise is damaged on the disk.",
  "attempt-elsewhere": "This exercise was worked on in another window; it stands here now as it was left there.",
  "sample-unknown": "There is no sample {sample}.",
  "call-unknown": "This page asks for {call}, which this Wirefathom does not do. Load the page again.",
  "call-argument": "This page asked {call} in a wrong way ({field}). Load the page again.",
  "call-text": "This page asked for something that cannot be read. Load the page again.",
  "call-too-large": "This is more than can be kept at once: {limit} MB at most.",
  "print-too-long": "The sheets took longer than {seconds} s and were given up.",
};

/** Words of the library that are no sentences. */
export const LIBRARY_NAMES = {
  copy: "copy",
  begun: "Begun",
  brought: "Brought in from a file",
  sample: "Copied from a sample",
  copied: "Copied",
  renamed: "Renamed",
  beside: "Kept beside",
} as const;
