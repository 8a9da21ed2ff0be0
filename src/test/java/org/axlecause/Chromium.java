package org.axlecause;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.io.Closeable;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Chromium, driven by Playwright. An installed one is used; where there is none, the system's package manager brings one,
 * else the library's own fetch.
 */
final class Chromium implements Closeable {

    private static final List<String> NAMES = List.of("chromium", "chromium-browser");
    private static final long MOST_MINUTES = 10;
    private static final double LONGEST_WAIT = 120_000;
    private static final String NOTHING_FETCHED_UNASKED = "PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD";

    private final Playwright playwright;
    private final Browser browser;

    Chromium() throws IOException, InterruptedException {
        Optional<Path> program = installed();
        if (program.isEmpty() && byThePackageManager()) {
            program = installed();
        }
        boolean fetched = program.isEmpty() && byTheLibrary();
        if (program.isEmpty() && !fetched) {
            throw new IllegalStateException("No Chromium was found on the path, and neither the system's package"
                    + " manager nor Playwright could bring one. Install it, on Debian by: apt-get install chromium");
        }
        playwright = Playwright.create(new Playwright.CreateOptions().setEnv(Map.of(NOTHING_FETCHED_UNASKED, "1")));
        BrowserType.LaunchOptions options = new BrowserType.LaunchOptions();
        program.ifPresent(options::setExecutablePath);
        browser = playwright.chromium().launch(options);
    }

    /** A window of this size that keeps its own cookies and opens addresses of this service. */
    BrowserContext window(PackagedService service, int width, int height, ColorScheme scheme) {
        BrowserContext window = browser.newContext(new Browser.NewContextOptions()
                .setBaseURL("http://127.0.0.1:" + service.port())
                .setViewportSize(width, height)
                .setColorScheme(scheme)
                .setLocale("en-GB")
                .setTimezoneId("Europe/London"));
        window.setDefaultTimeout(LONGEST_WAIT);
        window.setDefaultNavigationTimeout(LONGEST_WAIT);
        return window;
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }

    private static Optional<Path> installed() {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator, -1))
                .flatMap(folder -> NAMES.stream().map(name -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    private static boolean byThePackageManager() throws IOException, InterruptedException {
        return runs(List.of("apt-get", "update", "-qq"))
                && runs(List.of("apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium"));
    }

    private static boolean byTheLibrary() throws IOException, InterruptedException {
        return runs(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "com.microsoft.playwright.CLI",
                "install",
                "chromium"));
    }

    private static boolean runs(List<String> line) throws IOException, InterruptedException {
        ProcessBuilder command =
                new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD);
        command.environment().put("DEBIAN_FRONTEND", "noninteractive");
        try {
            Process process = command.start();
            if (!process.waitFor(MOST_MINUTES, TimeUnit.MINUTES)) {
                process.destroy();
                return false;
            }
            return process.exitValue() == 0;
        } catch (IOException noSuchCommand) {
            return false;
        }
    }
}
