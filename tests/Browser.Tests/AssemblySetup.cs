using Lanewright.Browser.Tests;

// One browser for the whole run; each test opens contexts of its own in it.
[assembly: AssemblyFixture(typeof(Chrome))]
