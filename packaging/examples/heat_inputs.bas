REM Heat inputs of a sheet's rows, asked of one process: seamtakt serve --stdio.
REM Columns A to D: voltage (V), current (A), travel speed (mm/s), process (ISO 4063); heads in row 1. Column E gets the
REM heat input in kJ/mm, or what the program found wrong with the row.
REM Tools > Macros > Edit Macros: paste this into a module "Seamtakt", then run HeatInputs on the open sheet. A macro runs with
REM your rights: take none from a sheet that somebody sent. SEAMTAKT names the program where it isn't in the PATH.
Option Explicit

Sub HeatInputs
  FillSheet(ThisComponent.Sheets.getByIndex(0))
End Sub

REM The same for a file, without a window: soffice --headless "macro:///Standard.Seamtakt.HeatInputsOfFile(""/path/sheet.ods"")"
Sub HeatInputsOfFile(path As String)
  Dim document As Object, hidden(0) As New com.sun.star.beans.PropertyValue
  hidden(0).Name = "Hidden"
  hidden(0).Value = True
  document = StarDesktop.loadComponentFromURL(ConvertToURL(path), "_blank", 0, hidden())
  FillSheet(document.Sheets.getByIndex(0))
  document.store()
  document.close(True)
End Sub

Sub FillSheet(sheet As Object)
  Dim requests As String, answers As String, folder As String, row As Long, answer As String, file As Integer
  row = 1
  Do While sheet.getCellByPosition(0, row).Type <> com.sun.star.table.CellContentType.EMPTY
    requests = requests & Request(sheet, row) & Chr(10)
    row = row + 1
  Loop
  If row = 1 Then Exit Sub
  folder = NewFolder()
  WriteFile(folder & "/requests", requests)
  WriteFile(folder & "/ask", "exec ""${SEAMTAKT:-seamtakt}"" serve --stdio <" & folder & "/requests >" & folder & "/answers" & Chr(10))
  Shell("/bin/sh", 0, folder & "/ask", True)
  file = FreeFile
  row = 1
  Open folder & "/answers" For Input As #file
  Do While Not EOF(file)
    Line Input #file, answer
    If answer <> "" Then
      ShowAnswer(sheet.getCellByPosition(4, row), answer)
      row = row + 1
    End If
  Loop
  Close #file
  Kill folder & "/requests"
  Kill folder & "/ask"
  Kill folder & "/answers"
  RmDir folder
End Sub

REM A number's own text has a decimal point whatever the language of the sheet; other text is passed on as it stands, in quotes.
Function Request(sheet As Object, row As Long) As String
  Request = "{""id"": " & row & ", ""command"": ""calc heat-input"", ""arguments"": {""voltage"": " & Text(sheet.getCellByPosition(0, row)) & _
    ", ""current"": " & Text(sheet.getCellByPosition(1, row)) & ", ""travel-speed"": " & Text(sheet.getCellByPosition(2, row)) & _
    ", ""process"": " & Text(sheet.getCellByPosition(3, row)) & "}}"
End Function

Function Text(cell As Object) As String
  Dim given As String, i As Long, letter As String
  If cell.Type = com.sun.star.table.CellContentType.TEXT Then given = cell.String Else given = Trim(Str(cell.Value))
  Text = """"
  For i = 1 To Len(given)
    letter = Mid(given, i, 1)
    If letter = """" Or letter = "\" Then letter = "\" & letter
    If Asc(letter) < 32 Then letter = " "
    Text = Text & letter
  Next i
  Text = Text & """"
End Function

Sub ShowAnswer(cell As Object, answer As String)
  Dim found As String
  found = Member(answer, """heat_input_kJ_mm"": ")
  If found = "" Then
    cell.String = "found " & Member(answer, """found"": ") & ", expected " & Member(answer, """expected"": ")
  ElseIf found = "null" Then
    cell.String = "not to be computed from these"
  Else
    cell.Value = Val(found)
  End If
End Sub

REM What stands behind a key, up to the comma or bracket that ends it, or between its quotes.
Function Member(answer As String, key As String) As String
  Dim at As Long, last As Long
  at = InStr(answer, key)
  If at = 0 Then Exit Function
  at = at + Len(key)
  If Mid(answer, at, 1) = """" Then
    last = at + 1
    Do While Mid(answer, last, 1) <> """"
      If Mid(answer, last, 1) = "\" Then last = last + 1
      Member = Member & Mid(answer, last, 1)
      last = last + 1
    Loop
  Else
    last = at
    Do While InStr(",}", Mid(answer, last, 1)) = 0
      last = last + 1
    Loop
    Member = Mid(answer, at, last - at)
  End If
End Function

REM A folder of our own: nobody else's file can stand in it.
Function NewFolder() As String
  Dim above As String
  above = Environ("TMPDIR")
  If above = "" Then above = "/tmp"
  Do
    NewFolder = above & "/seamtakt-" & CLng(Rnd() * 1000000000)
  Loop While Dir(NewFolder, 16) <> ""
  MkDir NewFolder
End Function

Sub WriteFile(path As String, content As String)
  Dim file As Integer
  file = FreeFile
  Open path For Output As #file
  Print #file, content;
  Close #file
End Sub
