# Answers the questions of ReferenceProgramTest by R's own functions: one line per answer, its name and its numbers.
suppressPackageStartupMessages(library(survival))
source(commandArgs(trailingOnly = TRUE)[1])

say <- function(name, values) cat(name, sprintf("%.17g", as.numeric(values)), "\n")

# Shares
for (i in seq_along(count)) {
  say(paste0("wilson", i - 1), prop.test(count[i], of[i], correct = FALSE)$conf.int)
  say(paste0("exact", i - 1), binom.test(count[i], of[i])$conf.int)
}
for (i in seq_along(rate)) {
  say(paste0("garwood", i - 1), poisson.test(events[i], rate[i])$conf.int)
}

# Two groups: Newcombe's tenth method from prop.test's score intervals
for (i in seq_along(first)) {
  one <- first[i] / firstOf[i]
  two <- second[i] / secondOf[i]
  a <- prop.test(first[i], firstOf[i], correct = FALSE)$conf.int
  b <- prop.test(second[i], secondOf[i], correct = FALSE)$conf.int
  say(paste0("newcombe", i - 1), one - two + c(
    -sqrt((one - a[1])^2 + (b[2] - two)^2), sqrt((a[2] - one)^2 + (two - b[1])^2)))
  table <- matrix(c(first[i], firstOf[i] - first[i], second[i], secondOf[i] - second[i]), 2)
  say(paste0("fisher", i - 1), fisher.test(table)$p.value)
  tested <- suppressWarnings(chisq.test(table, correct = FALSE))
  say(paste0("chisq", i - 1), c(tested$statistic, tested$p.value))
  say(paste0("expected", i - 1), min(tested$expected))
}

say("adjusted", p.adjust(pvalues, "BH"))

# Survival, one row per vehicle
rows <- data.frame(
  time = rep(c(time, time), c(died, censored)),
  status = rep(c(rep(1, length(time)), rep(0, length(time))), c(died, censored)),
  group = rep(c(group, group), c(died, censored)))
for (g in unique(group)) {
  fit <- survfit(Surv(time, status) ~ 1, data = rows[rows$group == g, ], conf.type = "log-log")
  kept <- fit$n.event > 0 & fit$surv > 0
  say(paste0("times", g), fit$time[kept])
  say(paste0("risk", g), fit$n.risk[kept])
  say(paste0("survival", g), fit$surv[kept])
  say(paste0("error", g), (fit$std.err * fit$surv)[kept])
  say(paste0("low", g), fit$lower[kept])
  say(paste0("high", g), fit$upper[kept])
  say(paste0("median", g), summary(fit)$table["median"])
}
tested <- survdiff(Surv(time, status) ~ group, data = rows)
say("logrank", c(tested$chisq, pchisq(tested$chisq, length(tested$n) - 1, lower.tail = FALSE)))
say("logrank-observed", tested$obs)
say("logrank-expected", tested$exp)
say("logrank-variance", diag(tested$var))

# Funnels
limits <- function(quantile, cumulative, size) {
  sapply(c(0.001, 0.025, 0.975, 0.999), function(p) {
    r <- quantile(p)
    max(0, r - (cumulative(r) - p) / (cumulative(r) - cumulative(r - 1))) / size
  })
}
for (i in seq_along(funnelOf)) {
  say(paste0("funnel-share", i - 1), limits(
    function(p) qbinom(p, funnelOf[i], target), function(r) pbinom(r, funnelOf[i], target), funnelOf[i]))
  low <- pbinom(funnelCount[i], funnelOf[i], target)
  high <- pbinom(funnelCount[i] - 1, funnelOf[i], target, lower.tail = FALSE)
  say(paste0("funnel-share-p", i - 1), min(1, 2 * min(low, high)))
}
for (i in seq_along(rate)) {
  say(paste0("funnel-ratio", i - 1), limits(
    function(p) qpois(p, rate[i]), function(r) ppois(r, rate[i]), rate[i]))
  low <- ppois(events[i], rate[i])
  high <- ppois(events[i] - 1, rate[i], lower.tail = FALSE)
  say(paste0("funnel-ratio-p", i - 1), min(1, 2 * min(low, high)))
}
ends <- quantile(deviations, c(0.1, 0.9))
say("overdispersion", max(1, mean(pmin(pmax(deviations, ends[1]), ends[2])^2)))

# A step at an unknown month
best <- 1
where <- NA
for (k in 2:length(month)) {
  a <- c(sum(month[1:(k - 1)]), sum(monthOf[1:(k - 1)]))
  b <- c(sum(month[k:length(month)]), sum(monthOf[k:length(month)]))
  table <- matrix(c(a[1], a[2] - a[1], b[1], b[2] - b[1]), 2)
  tested <- suppressWarnings(chisq.test(table, correct = FALSE))
  p <- if (min(tested$expected) < 5) fisher.test(table)$p.value else tested$p.value
  if (p < best) {
    best <- p
    where <- k - 1
  }
}
say("step", c(where, min(1, best * (length(month) - 1))))

# Calibration, one row per forecast
told <- rep(c(forecast, forecast), c(cameTrue, forecastOf - cameTrue))
outcome <- rep(c(rep(1, length(forecast)), rep(0, length(forecast))), c(cameTrue, forecastOf - cameTrue))
n <- ave(outcome, told, FUN = length)
share <- ave(outcome, told)
bin <- pmin(floor(told * 10), 9)
say("calibration", c(
  mean((told - outcome)^2),
  mean((told - share)^2),
  mean((share - mean(outcome))^2),
  mean(outcome) * (1 - mean(outcome)),
  -mean(outcome * log(told) + (1 - outcome) * log(1 - told)),
  sum(abs(tapply(told, bin, mean) - tapply(outcome, bin, mean)) * table(bin)) / length(told)))

say("moments", c(mean(values), sd(values), acf(values, 1, plot = FALSE)$acf[2]))
