// Command sumpter plans the food of a group on a multi-day trip on foot.
package main

func main() {}
