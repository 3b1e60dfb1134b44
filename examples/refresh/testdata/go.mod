// Golden files are for those who change the library: a module of their own keeps them out of its archive.
module borewright.example/examples/refresh/testdata

go 1.24.0
