# Fits the lives of a file with R's survival package and writes what it finds: the reference of
# lives_against_r_test. Run as: Rscript lives_reference.R LIVES REPEATS OUT
#
# LIVES   sample,entry,exit,failed            entry empty: watched from new
# REPEATS sample,vehicle,entry,exit,events    events separated by blanks
# OUT     one record a line, blanks between:
#   curve sample time at_risk failed survival error, then low and high by log-log, log, plain
#   quantile sample share time low high                      by log-log
#   weibull sample ln_scale ln_shape log_likelihood var_first var_second covariance
#   lognormal sample mean ln_deviation log_likelihood var_first var_second covariance
#   failed_by_weibull, failed_by_lognormal sample share ln_age error    where survreg fitted
#   logrank sample chi_squared p expected_first expected_second   of a sample and the next but one
#   repeats sample time at_risk events mean error
suppressPackageStartupMessages(library(survival))
paths <- commandArgs(trailingOnly = TRUE)
stopifnot(length(paths) == 3)
lives <- read.csv(paths[1])
repeats <- read.csv(paths[2], colClasses = c(events = "character"))
out <- file(paths[3], "w")
put <- function(name, ...) {
  cat(name, ifelse(is.na(c(...)), "NA", sprintf("%.17g", c(...))), "\n", file = out)
}

response <- function(s) {
  if (all(is.na(s$entry))) Surv(s$exit, s$failed)
  else Surv(ifelse(is.na(s$entry), 0, s$entry), s$exit, s$failed)
}

curve <- function(number, s) {
  y <- response(s)
  fits <- lapply(c("log-log", "log", "plain"),
                 function(type) survfit(y ~ 1, conf.type = type, conf.int = 0.95))
  f <- fits[[1]]
  error <- summary(f, times = f$time)$std.err
  for (i in which(f$n.event > 0)) {
    put("curve", number, f$time[i], f$n.risk[i], f$n.event[i], f$surv[i], error[i],
        unlist(lapply(fits, function(g) c(g$lower[i], g$upper[i]))))
  }
  # The first age at or below a level: survfit's own quantile halves flat stretches instead.
  first <- function(values, level) f$time[which(!is.na(values) & values <= level + 1e-9)[1]]
  for (share in c(0.1, 0.25, 0.5)) {
    put("quantile", number, share, first(f$surv, 1 - share), first(f$lower, 1 - share),
        first(f$upper, 1 - share))
  }
}

# Untruncated: survreg, whose parameters are the location and ln(scale) of ln t. Its Newton steps
# now and then leave for infinity from its own start; those samples are fitted by optim instead.
by_survreg <- function(name, number, s) {
  fit <- survreg(Surv(exit, failed) ~ 1, data = s, dist = name,
                 control = survreg.control(maxiter = 200, rel.tolerance = 1e-13))
  if (!all(is.finite(c(fit$coefficients, fit$loglik))) || any(diag(fit$var) <= 0)) {
    return(by_optim(name, number, s))
  }
  v <- fit$var
  sign <- if (name == "weibull") -1 else 1  # ln shape = -ln(survreg's scale)
  put(name, number, fit$coefficients[[1]], sign * log(fit$scale), fit$loglik[1],
      v[1, 1], v[2, 2], sign * v[1, 2])
  for (share in c(0.1, 0.5)) {
    age <- predict(fit, newdata = data.frame(one = 1), type = "uquantile", p = share, se.fit = TRUE)
    put(paste0("failed_by_", name), number, share, age$fit[[1]], age$se.fit[[1]])
  }
}

# Truncated, mostly: the likelihood written out with R's distributions and maximised without
# derivatives of ours: Nelder-Mead, then BFGS, then Newton steps on differences of fourth order.
log_likelihood <- function(name, s) {
  late <- !is.na(s$entry) & s$entry > 0
  died <- s$failed == 1
  function(p) {
    if (name == "weibull") {
      density <- function(t) dweibull(t, exp(p[2]), exp(p[1]), log = TRUE)
      beyond <- function(t) {
        pweibull(t, exp(p[2]), exp(p[1]), lower.tail = FALSE, log.p = TRUE)
      }
    } else {
      density <- function(t) dlnorm(t, p[1], exp(p[2]), log = TRUE)
      beyond <- function(t) plnorm(t, p[1], exp(p[2]), lower.tail = FALSE, log.p = TRUE)
    }
    sum(density(s$exit[died])) + sum(beyond(s$exit[!died])) - sum(beyond(s$entry[late]))
  }
}

slopes <- function(f, p, h = 1e-3) {
  unit <- diag(2) * h
  central <- function(g, i) {
    (8 * (g(unit[i, ]) - g(-unit[i, ])) - (g(2 * unit[i, ]) - g(-2 * unit[i, ]))) / (12 * h)
  }
  gradient <- function(at) sapply(1:2, function(i) central(function(d) f(at + d), i))
  curvature <- sapply(1:2, function(i) central(function(d) gradient(p + d), i))
  list(gradient = gradient(p), curvature = (curvature + t(curvature)) / 2)
}

by_optim <- function(name, number, s) {
  f <- log_likelihood(name, s)
  cost <- function(p) {
    value <- -f(p)
    if (is.finite(value)) value else 1e10
  }
  y <- log(s$exit)
  starts <- list(c(mean(y), 0), c(mean(y), 1), c(mean(y) + 1, -1), c(mean(y) - 1, 0.5))
  found <- lapply(starts, function(p) {
    p <- optim(p, cost, control = list(maxit = 5000, reltol = 1e-14))$par
    optim(p, cost, method = "BFGS", control = list(maxit = 1000, reltol = 1e-15,
                                                   ndeps = c(1e-5, 1e-5)))
  })
  best <- found[[which.min(sapply(found, function(each) each$value))]]$par
  for (step in 1:5) {
    d <- slopes(f, best)
    best <- best - solve(d$curvature, d$gradient)
  }
  v <- solve(-slopes(f, best)$curvature)
  put(name, number, best, f(best), v[1, 1], v[2, 2], v[1, 2])
}

# Counting-process rows with an id: the error of the cumulative hazard is then the robust one.
mean_repairs <- function(number, r) {
  rows <- do.call(rbind, lapply(seq_len(nrow(r)), function(i) {
    events <- as.numeric(strsplit(r$events[i], " ")[[1]])
    events <- sort(events[!is.na(events)])
    from <- ifelse(is.na(r$entry[i]), 0, r$entry[i])
    ends <- c(events, r$exit[i])
    data.frame(id = i, start = c(from, events), stop = ends,
               event = c(rep(1, length(events)), 0))
  }))
  rows <- rows[rows$stop > rows$start, ]
  f <- survfit(Surv(start, stop, event) ~ 1, id = id, data = rows, robust = TRUE)
  for (i in which(f$n.event > 0)) {
    put("repeats", number, f$time[i], f$n.risk[i], f$n.event[i], f$cumhaz[i], f$std.chaz[i])
  }
}

for (number in unique(lives$sample)) {
  s <- lives[lives$sample == number, ]
  curve(number, s)
  by <- if (all(is.na(s$entry))) by_survreg else by_optim
  by("weibull", number, s)
  by("lognormal", number, s)
}
# survdiff does not know late entries; there the score test of a Cox model with exact ties is the
# log-rank test.
log_rank <- function(number) {
  both <- lives[lives$sample %in% c(number, number + 2), ]
  group <- both$sample == number + 2
  if (all(is.na(both$entry))) {
    test <- survdiff(response(both) ~ group)
    put("logrank", number, test$chisq, pchisq(test$chisq, 1, lower.tail = FALSE), test$exp)
  } else {
    score <- coxph(response(both) ~ group, ties = "exact", init = 0,
                   control = coxph.control(iter.max = 0))$score
    put("logrank", number, score, pchisq(score, 1, lower.tail = FALSE), NA, NA)
  }
}
for (number in head(unique(lives$sample), -2)) log_rank(number)
for (number in unique(repeats$sample)) mean_repairs(number, repeats[repeats$sample == number, ])
close(out)
