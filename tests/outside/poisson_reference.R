# Rscript poisson_reference.R samples.csv out: poisson.test and binom.test of each sample.
arguments <- commandArgs(TRUE)
samples <- read.csv(arguments[1])
lines <- sapply(seq_len(nrow(samples)), function(i) {
  s <- samples[i, ]
  two <- poisson.test(c(s$first, s$second), c(s$exposure1, s$exposure2), conf.level = .90)
  one <- poisson.test(s$first, conf.level = .90)
  binomial <- binom.test(s$first, s$first + s$second, s$chance)
  sprintf("%.17g %.17g %.17g %.17g %.17g %.17g", two$conf.int[1], two$conf.int[2], two$p.value,
          one$conf.int[1], one$conf.int[2], binomial$p.value)
})
writeLines(lines, arguments[2])
