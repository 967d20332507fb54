# A page of the handbook, Markdown to HTML that browsers and the desk's own window show.
execute_process(COMMAND ${CMARK} --extension table ${PAGE} OUTPUT_VARIABLE body COMMAND_ERROR_IS_FATAL ANY)
file(STRINGS ${PAGE} heading LIMIT_COUNT 1 ENCODING UTF-8)
string(REGEX REPLACE "^# " "" title "${heading}")
string(REPLACE ".md\"" ".html\"" body "${body}")
string(REPLACE "<img src=" "<img width=\"760\" src=" body "${body}")
set(contents "Contents")
if(LANGUAGE STREQUAL "de")
  set(contents "Inhalt")
endif()
set(back "<p><a href=\"index.html\">${contents}</a></p>\n")
if(PAGE MATCHES "index\\.md$")
  set(back "")
endif()
file(WRITE ${TO} "<!DOCTYPE html>
<html lang=\"${LANGUAGE}\"><head><meta charset=\"utf-8\"><title>${title}</title>
<meta name=\"viewport\" content=\"width=device-width\">
<style>
body { max-width: 60em; margin: 2em auto; padding: 0 1em; font-family: sans-serif; line-height: 1.4; color: #23272e; background: #fffdf8; }
pre { overflow-x: auto; padding: 8px; background: #f1ede3; font-family: monospace; font-size: 85%; }
blockquote { margin: 0; padding: 4px 1em; background: #f1ede3; }
img { max-width: 100%; height: auto; }
a { color: #1f5f99; }
</style></head><body>
${back}${body}${back}</body></html>
")
