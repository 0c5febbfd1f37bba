module sumpter

go 1.26
