package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Somebody who has never seen the pages comes from the start page to the first verdict; the browser counts what that takes. */
class FirstUseIT {

    private static final int MOST = 25;
    private static final String MAKE = "Corvane";

    /** Counts taps and keystrokes over all pages; figures and the decimal point are the numbers themselves. */
    private static final String COUNTING = """
            for (const kind of ['pointerdown', 'keydown']) {
              addEventListener(kind, (event) => {
                if (kind === 'pointerdown' || !/^[0-9.,]$/.test(event.key)) {
                  sessionStorage.setItem('acts', Number(sessionStorage.getItem('acts') ?? 0) + 1);
                }
              }, true);
            }
            """;

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    Path folder;

    private Page page;
    private int taps;

    @Test
    void from_the_start_page_to_the_first_verdict_takes_few_taps_and_keystrokes() throws Exception {
        try (PackagedService service = new PackagedService(folder).start();
                Chromium chromium = new Chromium();
                BrowserContext window = chromium.window(service, 820, 1180, ColorScheme.LIGHT)) {
            service.putSite();
            window.addInitScript(COUNTING);
            page = window.newPage();
            page.navigate("/");

            tap(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Open a case")));
            tap(page.getByText("Failed its inspection"));
            tap(page.getByText("Van (N1)"));
            write("make", MAKE);
            write("testMass", "1430");
            choose("Front brake", "Disc, floating calliper");
            choose("Rear brake and parking brake", "Drum, cable on the shoes");
            tap(page.getByText("Open it and key in the readings"));
            write("service.1.left", "2100");
            write("service.1.right", "2050");
            write("service.2.left", "590");
            write("service.2.right", "1610");
            write("parking.2.left", "560");
            write("parking.2.right", "900");
            tap(page.getByText("Save the readings"));

            Locator verdict = page.locator("section[aria-labelledby=follows]");
            verdict.getByText("63 %").first().waitFor();
            assertThat(verdict.innerText())
                    .contains("The two wheels of this axle brake unevenly", "Rear axle, left wheel");
            assertThat(page.locator("section[aria-labelledby=next] article")
                            .first()
                            .isVisible())
                    .as("the next look is shown")
                    .isTrue();
            assertThat(Integer.parseInt((String) page.evaluate("() => sessionStorage.getItem('acts')")))
                    .as("taps and keystrokes beyond the numbers")
                    .isBetween(taps + MAKE.length(), MOST);
        }
    }

    private void write(String field, String text) {
        tap(page.locator("[id='" + field + "']"));
        page.keyboard().type(text);
    }

    private void choose(String question, String answer) {
        tap(page.getByRole(AriaRole.GROUP, new Page.GetByRoleOptions().setName(question))
                .getByText(answer, new Locator.GetByTextOptions().setExact(true)));
    }

    private void tap(Locator target) {
        target.click();
        taps++;
    }
}
